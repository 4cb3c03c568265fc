<?xml version="1.0" encoding="UTF-8"?>
<!--
  How this type's own names and documents are said. Format: ../language/pronunciations.pls.
-->
<lexicon version="1.0" alphabet="ipa" xml:lang="en-GB"
         xmlns="http://www.w3.org/2005/01/pronunciation-lexicon">
  <lexeme><grapheme>Aldermere 120</grapheme><alias>Aldermere one twenty</alias></lexeme>
  <lexeme><grapheme>Aldermere 120L</grapheme><alias>Aldermere one twenty L</alias></lexeme>
  <lexeme><grapheme>the 120</grapheme><alias>the one twenty</alias></lexeme>
  <lexeme><grapheme>120L</grapheme><alias>one twenty L</alias></lexeme>
  <lexeme><grapheme>Aldermere</grapheme><phoneme>ˈɔːldəmɪə</phoneme></lexeme>
  <lexeme><grapheme>AOM</grapheme><alias>A O M</alias></lexeme>
  <lexeme><grapheme>LIM</grapheme><alias>limitations</alias></lexeme>
  <lexeme><grapheme>A limit of LIM 3 exceeded</grapheme><alias>A limit exceeded</alias></lexeme>
  <lexeme><grapheme>a limit of LIM 3</grapheme><alias>a limit</alias></lexeme>
  <lexeme><grapheme>ABN</grapheme><alias>abnormal checklist</alias></lexeme>
  <lexeme><grapheme>SOP</grapheme><alias>S O P</alias></lexeme>
  <lexeme><grapheme>ABN 32.1 M4 goes</grapheme><alias>memory item four of no braking on landing goes</alias></lexeme>
  <lexeme><grapheme>until LIM 3.2 is met</grapheme><alias>until the limit is met</alias></lexeme>
</lexicon>
