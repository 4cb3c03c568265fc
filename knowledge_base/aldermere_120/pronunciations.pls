<?xml version="1.0" encoding="UTF-8"?>
<!--
  How this type's own names and documents are said. Format: ../language/pronunciations.pls.
-->
<lexicon version="1.0" alphabet="ipa" xml:lang="en-GB"
         xmlns="http://www.w3.org/2005/01/pronunciation-lexicon"
         xmlns:say="urn:downlock:manner-of-speaking">
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

  <!-- Labels whose capitals tell the eye what they are -->
  <lexeme role="say:label"><grapheme>NORMAL</grapheme><alias>normal mode</alias></lexeme>
  <lexeme role="say:label"><grapheme>ALTERNATE</grapheme><alias>alternate mode</alias></lexeme>
  <lexeme role="say:label"><grapheme>EMERGENCY</grapheme><alias>emergency mode</alias></lexeme>
  <lexeme role="say:label"><grapheme>STEADY</grapheme><alias>the steady setting</alias></lexeme>
  <lexeme role="say:label"><grapheme>FIRM</grapheme><alias>the firm setting</alias></lexeme>
  <lexeme role="say:label"><grapheme>FULL</grapheme><alias>the full setting</alias></lexeme>
  <lexeme role="say:label"><grapheme>STEER LOST</grapheme><alias>the caption steer lost</alias></lexeme>
  <lexeme role="say:label"><grapheme>ANTI-SKID LOST</grapheme><alias>the caption anti-skid lost</alias></lexeme>
  <lexeme role="say:label"><grapheme>AUTOBRAKE OFF</grapheme><alias>the caption autobrake off</alias></lexeme>
  <lexeme role="say:label"><grapheme>ON TARGET</grapheme><alias>the caption on target</alias></lexeme>
  <lexeme role="say:label"><grapheme>BRAKE HEAT</grapheme><alias>the caption brake heat</alias></lexeme>
  <lexeme role="say:label"><grapheme>GEAR DOOR</grapheme><alias>the caption gear door</alias></lexeme>
  <lexeme role="say:label"><grapheme>GEAR MISMATCH</grapheme><alias>the caption gear mismatch</alias></lexeme>
  <lexeme role="say:label"><grapheme>GEAR NOT LOCKED</grapheme><alias>the caption gear not locked</alias></lexeme>
  <lexeme role="say:label"><grapheme>TOW PIN</grapheme><alias>the memo tow pin</alias></lexeme>
  <lexeme role="say:label"><grapheme>PARK BRAKE SET</grapheme><alias>the memo park brake set</alias></lexeme>
  <lexeme role="say:label"><grapheme>RESERVE BRAKE</grapheme><alias>the memo reserve brake</alias></lexeme>
</lexicon>
