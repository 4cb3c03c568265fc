<?xml version="1.0" encoding="UTF-8"?>
<!--
  How abbreviations, signs and names are said: a Pronunciation Lexicon, W3C PLS 1.0.

  grapheme   the written form; capitals count. Several of one lexeme are said alike.
  alias      how it is said, in ordinary words and letters: what answers are spoken with.
  phoneme    how it is pronounced, in the International Phonetic Alphabet, of what the letters do not tell: for
             synthesisers that read SSML.
  role       say:radio: a word of a number that is said digit by digit, as on the radio. say:respelt: what is said,
             as a synthesiser must be given it that reads plain text and would get it wrong. say:label: a label in
             capitals with the kind of thing it names, said where the sentence does not tell ("in NORMAL").

  A plain word is replaced wherever it stands alone; an entry with a figure, a space or a sign in it, such as
  "J/(kg·K)", wherever it is written. Amounts need no entry: units.yaml says how their units are spoken. Words
  in capitals without an entry are said as words when they hold a vowel, and else letter by letter.

  A type's folder may hold a file like this one for its own names and documents; no entry may be in two files.
-->
<lexicon version="1.0" alphabet="ipa" xml:lang="en-GB"
         xmlns="http://www.w3.org/2005/01/pronunciation-lexicon"
         xmlns:say="urn:downlock:manner-of-speaking">

  <!-- Speeds, modes and positions -->
  <lexeme><grapheme>VLE</grapheme><alias>V L E</alias></lexeme>
  <lexeme><grapheme>VLO</grapheme><alias>V L O</alias></lexeme>
  <lexeme><grapheme>VREF</grapheme><alias>V ref</alias></lexeme>
  <lexeme><grapheme>RTO</grapheme><alias>R T O</alias></lexeme>
  <lexeme><grapheme>IAS</grapheme><alias>indicated airspeed</alias></lexeme>
  <lexeme><grapheme>CAS</grapheme><alias>calibrated airspeed</alias></lexeme>
  <lexeme><grapheme>EAS</grapheme><alias>equivalent airspeed</alias></lexeme>
  <lexeme><grapheme>TAS</grapheme><alias>true airspeed</alias></lexeme>
  <lexeme><grapheme>DN</grapheme><alias>down</alias></lexeme>
  <lexeme><grapheme>ISA</grapheme><alias>I S A</alias></lexeme>
  <lexeme><grapheme>OAT</grapheme><alias>outside air temperature</alias></lexeme>
  <lexeme><grapheme>ATA</grapheme><alias>A T A</alias></lexeme>
  <lexeme><grapheme>ATC</grapheme><alias>A T C</alias></lexeme>
  <lexeme><grapheme>NOTAM</grapheme><alias>notam</alias><phoneme>ˈnəʊtæm</phoneme></lexeme>

  <!-- Publishers and publications -->
  <lexeme><grapheme>ICAO</grapheme><alias>eye-kay-oh</alias><phoneme>aɪˈkeɪəʊ</phoneme></lexeme>
  <lexeme><grapheme>US</grapheme><alias>U S</alias></lexeme>
  <lexeme><grapheme>FAA</grapheme><alias>F A A</alias></lexeme>
  <lexeme><grapheme>EASA</grapheme><alias>ee-ah-sa</alias><phoneme>iːˈæsə</phoneme></lexeme>
  <lexeme><grapheme>NASA</grapheme><alias>nassa</alias><phoneme>ˈnæsə</phoneme></lexeme>
  <lexeme><grapheme>AIM</grapheme><alias>A I M</alias></lexeme>
  <lexeme><grapheme>AFH</grapheme><alias>A F H</alias></lexeme>
  <lexeme><grapheme>AMT</grapheme><alias>A M T</alias></lexeme>
  <lexeme><grapheme>AC</grapheme><alias>A C</alias></lexeme>
  <lexeme><grapheme>RCAM</grapheme><alias>R cam</alias></lexeme>
  <lexeme><grapheme>NIST</grapheme><alias>nist</alias></lexeme>
  <lexeme><grapheme>SI</grapheme><alias>S I</alias></lexeme>
  <lexeme><grapheme>ISO</grapheme><alias>I S O</alias></lexeme>
  <lexeme><grapheme>NAVEDTRA</grapheme><alias>nav-ed-tra</alias></lexeme>

  <!-- Units that stand without a number -->
  <lexeme><grapheme>kt</grapheme><alias>knots</alias></lexeme>
  <lexeme><grapheme>psi</grapheme><alias>p s i</alias></lexeme>
  <lexeme><grapheme>mph</grapheme><alias>miles per hour</alias></lexeme>
  <lexeme><grapheme>kPa</grapheme><alias>kilopascals</alias></lexeme>
  <lexeme><grapheme>mm</grapheme><alias>millimetres</alias></lexeme>
  <lexeme><grapheme>ft</grapheme><alias>feet</alias></lexeme>
  <lexeme><grapheme>kg</grapheme><alias>kilograms</alias></lexeme>
  <lexeme><grapheme>MJ</grapheme><alias>megajoules</alias></lexeme>
  <lexeme><grapheme>J/(kg·K)</grapheme><alias>joules per kilogram and kelvin</alias></lexeme>
  <lexeme><grapheme>kJ/(kg·K)</grapheme><alias>kilojoules per kilogram and kelvin</alias></lexeme>
  <lexeme><grapheme>kg/m³</grapheme><alias>kilograms per cubic metre</alias></lexeme>
  <lexeme><grapheme>m/s²</grapheme><alias>metres per second squared</alias></lexeme>

  <!-- Signs -->
  <lexeme><grapheme>→</grapheme><alias>to</alias></lexeme>
  <lexeme><grapheme>&amp;</grapheme><alias>and</alias></lexeme>
  <lexeme><grapheme>=</grapheme><alias>equals</alias></lexeme>
  <lexeme><grapheme>+</grapheme><alias>plus</alias></lexeme>
  <lexeme><grapheme>−</grapheme><alias>minus</alias></lexeme>
  <lexeme><grapheme>×</grapheme><alias>times</alias></lexeme>
  <lexeme><grapheme>÷</grapheme><alias>divided by</alias></lexeme>
  <lexeme><grapheme>±</grapheme><alias>plus or minus</alias></lexeme>
  <lexeme><grapheme>√p</grapheme><alias>the square root of the pressure</alias></lexeme>
  <lexeme><grapheme>√</grapheme><alias>the square root of</alias></lexeme>
  <lexeme><grapheme>≈</grapheme><alias>about</alias></lexeme>
  <lexeme><grapheme>&lt;</grapheme><alias>less than</alias></lexeme>
  <lexeme><grapheme>&gt;</grapheme><alias>more than</alias></lexeme>
  <lexeme><grapheme>≤</grapheme><alias>at most</alias></lexeme>
  <lexeme><grapheme>≥</grapheme><alias>at least</alias></lexeme>
  <lexeme><grapheme>½</grapheme><alias>one half</alias></lexeme>
  <lexeme><grapheme>¼</grapheme><alias>one quarter</alias></lexeme>
  <lexeme><grapheme>¾</grapheme><alias>three quarters</alias></lexeme>
  <lexeme><grapheme>and/or</grapheme><alias>and or</alias></lexeme>

  <!-- Formulas: the letters of Greece, functions -->
  <lexeme><grapheme>sin δ</grapheme><alias>the sine of delta</alias></lexeme>
  <lexeme><grapheme>tan δ</grapheme><alias>the tangent of delta</alias></lexeme>
  <lexeme><grapheme>α</grapheme><alias>alpha</alias></lexeme>
  <lexeme><grapheme>β</grapheme><alias>beta</alias></lexeme>
  <lexeme><grapheme>γ</grapheme><alias>gamma</alias></lexeme>
  <lexeme><grapheme>δ</grapheme><alias>delta</alias></lexeme>
  <lexeme><grapheme>ε</grapheme><alias>epsilon</alias></lexeme>
  <lexeme><grapheme>η</grapheme><alias>eta</alias></lexeme>
  <lexeme><grapheme>θ</grapheme><alias>theta</alias></lexeme>
  <lexeme><grapheme>λ</grapheme><alias>lambda</alias></lexeme>
  <lexeme><grapheme>μ</grapheme><alias>mu</alias></lexeme>
  <lexeme><grapheme>ν</grapheme><alias>nu</alias></lexeme>
  <lexeme><grapheme>π</grapheme><alias>pi</alias></lexeme>
  <lexeme><grapheme>ρ</grapheme><alias>rho</alias></lexeme>
  <lexeme><grapheme>σ</grapheme><alias>sigma</alias></lexeme>
  <lexeme><grapheme>τ</grapheme><alias>tau</alias></lexeme>
  <lexeme><grapheme>φ</grapheme><alias>phi</alias></lexeme>
  <lexeme><grapheme>ω</grapheme><alias>omega</alias></lexeme>
  <lexeme><grapheme>Δ</grapheme><alias>delta</alias></lexeme>

  <!-- Phrases that read well and are heard badly -->
  <lexeme><grapheme>everything not named normal</grapheme><alias>everything else normal</alias></lexeme>
  <lexeme><grapheme>p in psi</grapheme><alias>the pressure in p s i</alias></lexeme>
  <lexeme><grapheme>ends included</grapheme><alias>both included</alias></lexeme>

  <lexeme><grapheme>part 121</grapheme><grapheme>Part 121</grapheme><alias>part one twenty-one</alias></lexeme>
  <lexeme><grapheme>e.g.</grapheme><alias>for example</alias></lexeme>
  <lexeme><grapheme>i.e.</grapheme><alias>that is</alias></lexeme>
  <lexeme><grapheme>vs.</grapheme><alias>against</alias></lexeme>
  <lexeme><grapheme>No. </grapheme><alias>number </alias></lexeme>
  <lexeme><grapheme>ch. </grapheme><alias>chapter </alias></lexeme>
  <lexeme><grapheme>Volume II</grapheme><alias>Volume two</alias></lexeme>
  <lexeme><grapheme>Volume I</grapheme><alias>Volume one</alias></lexeme>
  <lexeme><grapheme>150/5300-13B</grapheme><alias>one fifty, fifty-three hundred, thirteen B</alias></lexeme>
  <lexeme><grapheme>43.13-1B</grapheme><alias>forty-three thirteen, one B</alias></lexeme>
  <lexeme><grapheme>FL</grapheme><alias>flight level</alias></lexeme>
  <lexeme><grapheme>kN</grapheme><alias>kilonewtons</alias></lexeme>
  <lexeme><grapheme>kts</grapheme><alias>knots</alias></lexeme>
  <lexeme><grapheme>psig</grapheme><alias>p s i gauge</alias></lexeme>
  <lexeme><grapheme>UTC</grapheme><alias>U T C</alias></lexeme>
  <lexeme><grapheme>TODA</grapheme><alias>T O D A</alias></lexeme>
  <lexeme><grapheme>TODR</grapheme><alias>T O D R</alias></lexeme>
  <lexeme><grapheme>TORA</grapheme><alias>T O R A</alias></lexeme>
  <lexeme><grapheme>ASDA</grapheme><alias>A S D A</alias></lexeme>
  <lexeme><grapheme>LDA</grapheme><alias>landing distance available</alias></lexeme>

  <!-- Words of the trade that spelling does not tell -->
  <lexeme><grapheme>castor</grapheme><phoneme>ˈkɑːstə</phoneme></lexeme>
  <lexeme><grapheme>castors</grapheme><phoneme>ˈkɑːstəz</phoneme></lexeme>
  <lexeme><grapheme>oleo</grapheme><phoneme>ˈəʊliəʊ</phoneme></lexeme>
  <lexeme><grapheme>hydroplaning</grapheme><phoneme>ˈhaɪdrəʊˌpleɪnɪŋ</phoneme></lexeme>
  <lexeme><grapheme>aquaplaning</grapheme><phoneme>ˈækwəˌpleɪnɪŋ</phoneme></lexeme>
  <lexeme><grapheme>axle</grapheme><phoneme>ˈæksəl</phoneme></lexeme>
  <lexeme><grapheme>gauge</grapheme><phoneme>ɡeɪdʒ</phoneme></lexeme>

  <!-- Numbers on the radio: ICAO Annex 10 Volume II, 5.2.1.4.3.1; Doc 9432, 2.4 -->
  <lexeme role="say:radio"><grapheme>three</grapheme><alias>tree</alias><phoneme>triː</phoneme></lexeme>
  <lexeme role="say:radio"><grapheme>four</grapheme><alias>fower</alias><phoneme>ˈfəʊə</phoneme></lexeme>
  <lexeme role="say:radio"><grapheme>five</grapheme><alias>fife</alias><phoneme>faɪf</phoneme></lexeme>
  <lexeme role="say:radio"><grapheme>nine</grapheme><alias>niner</alias><phoneme>ˈnaɪnə</phoneme></lexeme>
  <lexeme role="say:radio"><grapheme>thousand</grapheme><alias>tousand</alias><phoneme>ˈtaʊˈsænd</phoneme></lexeme>

  <!-- The same, as spelt for whoever learns them: syllables in capitals are no letters -->
  <lexeme><grapheme>ZE-RO</grapheme><alias>zero</alias></lexeme>
  <lexeme><grapheme>FOW-ER</grapheme><alias>fower</alias></lexeme>
  <lexeme><grapheme>SEV-EN</grapheme><alias>seven</alias></lexeme>
  <lexeme><grapheme>NIN-ER</grapheme><alias>niner</alias></lexeme>

  <!-- What synthesisers get wrong; of two entries that fit, the longer one counts -->
  <lexeme role="say:respelt"><grapheme>use</grapheme><alias>yooz</alias></lexeme>
  <lexeme role="say:respelt"><grapheme>Use</grapheme><alias>Yooz</alias></lexeme>
  <lexeme role="say:respelt"><grapheme>in use</grapheme><alias>in yoose</alias></lexeme>
  <lexeme role="say:respelt"><grapheme>for use</grapheme><alias>for yoose</alias></lexeme>
  <lexeme role="say:respelt"><grapheme>after use</grapheme><alias>after yoose</alias></lexeme>
  <lexeme role="say:respelt"><grapheme>the use</grapheme><alias>the yoose</alias></lexeme>
  <lexeme role="say:respelt"><grapheme>to alternate</grapheme><alias>to awlternet</alias></lexeme>
  <lexeme role="say:respelt"><grapheme>I read no</grapheme><alias>I red no</alias></lexeme>
  <lexeme role="say:respelt"><grapheme>doors close</grapheme><alias>doors cloze</alias></lexeme>
  <lexeme role="say:respelt"><grapheme>debooster</grapheme><alias>dee booster</alias></lexeme>
  <lexeme role="say:respelt"><grapheme>precharge</grapheme><alias>pre-charge</alias></lexeme>
</lexicon>
