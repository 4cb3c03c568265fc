<lexicon xmlns="http://www.w3.org/2005/01/pronunciation-lexicon">
  <lexeme><grapheme>A</grapheme>
</lexicon>
