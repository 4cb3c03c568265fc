<?xml version="1.0" encoding="UTF-8"?>
<lexicon version="1.0" alphabet="ipa" xml:lang="en" xmlns="http://www.w3.org/2005/01/pronunciation-lexicon">
  <lexeme><grapheme>ABC</grapheme><alias>A B C</alias></lexeme>
  <lexeme><grapheme>DEF</grapheme></lexeme>
  <lexeme><alias>nothing</alias></lexeme>
  <lexeme role="say:loudly"><grapheme>GHI</grapheme><alias> </alias><phoneme>dʒiː</phoneme></lexeme>
  <lexeme><grapheme>ABC</grapheme><grapheme>abc</grapheme><alias>alphabet</alias></lexeme>
  <lexeme><grapheme>JKL</grapheme><alais>J K L</alais></lexeme>
</lexicon>
