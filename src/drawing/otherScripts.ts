/**
 * Advance widths of letters beyond the plain alphabet (accented, Greek, Cyrillic, signs), thousandths of the letter size: part names
 * are written in any of them. From the tables of DejaVu Sans Condensed 2.37, which the paper is set in, rounded up to 20; its bold
 * cut stays below 1.08 times these.
 */
const BY_WIDTH: readonly (readonly [width: number, characters: string])[] = [
  [300, '\u00A0ìíîïĩīĭįıĵĺļіїј'],
  [320, '¦\u00B7ÌÍÎÏĨĪĬĮİĴł·ΙΪІЇЈ‘’'],
  [340, 'ΐίιϊ'],
  [360, '\u00AD'],
  [380, '¡²³¹ſ'],
  [400, 'ľţťŧț'],
  [420, 'ŕŗř'],
  [460, '§¨¯´¸†'],
  [480, 'ªºŀΊгѓґ'],
  [500, '¿çćĉċčśŝşšźżžșέεζзсэєѕ'],
  [520, 'ξ'],
  [540, 'ĹĻĽĿŁΓλςχвтхь•'],
  [560, '«»ýÿķĸŷτЃГуяўҐ“”„⌀'],
  [580, '¢£¤¥¶ÈÉÊËàáâãäåèéêëðòóôõöāăąĒēĔĕĖėĘęĚěĳōŏőŢŤŦȚΕΞΣΤΰγδθνουϋόύЀЁЕТаекочѐёќ€√'],
  [600, 'ßñùúûüþďđĝğġģĥńņňŋŚŜŞŠũūŭůűųȘάήαβηκρЅЗбийнпрђѝџ'],
  [620, 'µÝÞĲŶŸŹŻŽΖΡΥΫμРлцћ'],
  [640, 'ÇĆĈĊČΒЄБВСЬЭъ'],
  [660, 'ÀÁÂÃÄÅĀĂĄħĶŔŖŘΑΔΚΛΧπσφЎАУХЯ'],
  [680, 'ÙÚÛÜŨŪŬŮŰŲΆψЧд'],
  [700, 'ÐÑĎĐĜĞĠĢĤŃŅŇŊΗΝΠЌЍЏИЙКЛНПм'],
  [720, 'ÒÓÔÕÖØŌŎŐΈΘΟΦΨΩО'],
  [740, 'ЂЋ'],
  [760, '¬÷ΌΏωώДы←↑→↓≈≠≤≥'],
  [780, 'ŵЦ'],
  [800, 'Ъ'],
  [820, 'ŉΎюњ'],
  [840, 'ĦΜМФжфљ'],
  [860, 'Ή'],
  [880, 'Ы⅓⅔⅜⅝⅞'],
  [900, '©®æш—…™'],
  [920, 'ÆŴ'],
  [940, 'œщ\uFFFD'],
  [960, 'Њ'],
  [980, 'ŒЮ'],
  [1000, 'Љ'],
  [1020, 'Ж№'],
  [1040, 'Ш'],
  [1120, 'Щ'],
  [1220, '‰'],
];

export const OTHER_SCRIPTS: Readonly<Record<string, number>> = Object.fromEntries(BY_WIDTH.flatMap(([width, characters]) => [...characters].map((c) => [c, width])));
