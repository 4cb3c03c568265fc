<words><word>A</word></words>
