/** Number words and fractions, and the units beside which they stand for a measured number, by language. */
interface Counting {
  numbers: string;
  units: string;
}

const languages: Readonly<Record<string, Counting>> = {
  en: {
    numbers:
      'two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|thirteen|fourteen|fifteen|sixteen|seventeen|eighteen|nineteen|twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety|hundred|thousand|half|third|thirds|quarter|quarters|fifth|fifths|tenth|tenths|dozen|twice|double',
    units:
      'millions?|billions?|years?|per\\s?cent|percent|millimet(?:re|er)s?|centimet(?:re|er)s?|met(?:re|er)s?|inch(?:es)?|degrees?|times',
  },
  es: {
    numbers:
      'dos|tres|cuatro|cinco|seis|siete|ocho|nueve|diez|once|doce|trece|catorce|quince|dieciséis|diecisiete|dieciocho|diecinueve|veinte|treinta|cuarenta|cincuenta|sesenta|setenta|ochenta|noventa|cien|ciento|mil|medio|media|mitad|tercio|tercios|cuarto|cuartos|quinto|quintos|décimo|décimos|docena|doble',
    units:
      'millon(?:es)?|millón|años?|por\\s?ciento|milímetros?|centímetros?|metros?|pulgadas?|grados?|veces',
  },
  ar: {
    numbers:
      'اثنان|اثنين|اثنتان|ثلاثة|ثلاث|أربعة|أربع|خمسة|خمس|ستة|ست|سبعة|سبع|ثمانية|ثماني|تسعة|تسع|عشرة|عشر|عشرون|عشرين|ثلاثون|ثلاثين|أربعون|أربعين|خمسون|خمسين|ستون|ستين|سبعون|سبعين|ثمانون|ثمانين|تسعون|تسعين|مئة|مائة|ألف|نصف|ثلث|ثلثا|ثلثي|ربع|ضعف',
    units:
      'مليون|ملايين|سنة|سنوات|عام|أعوام|عاما|عامًا|بالمئة|بالمائة|في\\s?المئة|ملليمترات?|مليمترات?|سنتيمترات?|متر|أمتار|درجة|درجات|مرات|أضعاف',
  },
};

/** The pattern that finds number words beside units or the given trait words; undefined for languages without a list. */
export function numberWordPattern(language: string, traitWords: readonly string[]): RegExp | undefined {
  const counting = languages[language.split('-')[0]!];
  if (!counting) return undefined;
  const escaped = traitWords.map((word) => word.replaceAll(/[.*+?^${}()|[\]\\]/g, '\\$&'));
  const units = [counting.units, ...escaped].join('|');
  const between = '(?:[\\s-]+(?:of|de|del|the|las?|los|el|an?))*[\\s-]+';
  return new RegExp(`(?<![\\p{L}])(?:${counting.numbers})${between}(?:${units})(?![\\p{L}])`, 'giu');
}
