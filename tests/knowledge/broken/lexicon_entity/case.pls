<?xml version="1.0"?>
<!DOCTYPE lexicon [
  <!ENTITY a "ha">
  <!ENTITY b "&a;&a;&a;&a;&a;&a;&a;&a;">
]>
<lexicon version="1.0" xmlns="http://www.w3.org/2005/01/pronunciation-lexicon">
  <lexeme><grapheme>A</grapheme><alias>&b;</alias></lexeme>
</lexicon>
