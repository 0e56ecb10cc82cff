import type { JarTreatmentName } from '@/shared/forms/preparation'

/** How empty jars are made ready, with what it means for the day. */
export const TREATMENT_CHOICES: readonly { value: JarTreatmentName; label: string; hint: string }[] = [
  {
    value: 'washed-hot',
    label: 'Washed and kept hot',
    hint: 'Where the published process is under 10 min it is run longer, as the publication allows, so that no jar needs boiling.',
  },
  { value: 'boiled-in-pot', label: 'Boiled in a pot', hint: 'Takes a pot and a burner.' },
  { value: 'boiled-in-canners', label: 'Boiled in the canners', hint: 'Takes canner minutes before every load.' },
]

/** "washed and kept hot", as said in a sentence. */
export const treatmentWords = (treatment: JarTreatmentName): string =>
  ({ 'washed-hot': 'washed and kept hot', 'boiled-in-pot': 'boiled in a pot', 'boiled-in-canners': 'boiled in the canners' })[treatment]
