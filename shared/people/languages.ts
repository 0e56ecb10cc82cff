/** Languages that a household or a person may name: ISO 639 codes, the two-letter one where there is one. Names in letters that our fonts draw. */
export const LANGUAGES = [
  'en',
  'es',
  'fr',
  'ht',
  'pt',
  'de',
  'pl',
  'ro',
  'ru',
  'uk',
  'ar',
  'so',
  'hmn',
  'vi',
  'tl',
  'ko',
  'zh',
  'ja',
] as const
export type Language = (typeof LANGUAGES)[number]

const NAMES: Readonly<Record<Language, string>> = {
  en: 'English',
  es: 'Español (Spanish)',
  fr: 'Français (French)',
  ht: 'Kreyòl ayisyen (Haitian Creole)',
  pt: 'Português (Portuguese)',
  de: 'Deutsch (German)',
  pl: 'Polski (Polish)',
  ro: 'Română (Romanian)',
  ru: 'Russian',
  uk: 'Ukrainian',
  ar: 'Arabic',
  so: 'Soomaali (Somali)',
  hmn: 'Hmong',
  vi: 'Vietnamese',
  tl: 'Tagalog',
  ko: 'Korean',
  zh: 'Chinese',
  ja: 'Japanese',
}

/** "Español (Spanish)"; the code itself when the list does not know it. */
export const languageName = (code: string): string => NAMES[code as Language] ?? code
