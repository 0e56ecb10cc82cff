import { headspaceOf } from '@/shared/day/headspace-of'
import { kettleWorkOf } from '@/shared/planning/kettle-works'
import { productName, productNoun } from '@/shared/day/product-name'
import { type JarSize, jarName } from '@/shared/kitchen/jar-sizes'
import { washedOffBefore } from '@/shared/planning/table-wash'
import type { DayPlan, PlannedTask, PlanTaskKind } from '@/shared/planning/day-plan'
import type { DayProblem } from '@/shared/planning/day-problem'
import { sayHeadspace } from '@/shared/wording/say-process'

/** Languages in which a person's own list can be said. */
export type TaskLanguage = 'en' | 'es'

/** What a task is about, looked up once for all languages. */
export interface TaskFacts {
  readonly codes: string
  readonly product: string
  readonly noun: string
  readonly jars: number
  readonly jarSize: JarSize
  readonly minutes: number
  readonly psi: number | null
  readonly isPressure: boolean
  readonly restMinutes: number
  /** "½ in (13 mm)", or null when no table holds it. */
  readonly headspace: string | null
  /** No process: the jars go to the fridge or the freezer. */
  readonly isChilled: boolean
  readonly jarBoilMinutes: number
  /** Allergens that are washed off the table first, where the day asks for it. */
  readonly washOff: readonly string[]
}

/** What to do, in one sentence, the next thing first: "Fill 8 half-pints of J3." */
export function sayTask(problem: DayProblem, plan: DayPlan, task: PlannedTask, language: TaskLanguage = 'en'): string {
  return SENTENCES[language][task.kind](taskFacts(problem, plan, task))
}

/** Where a task is done: "Canner 2", "Fill table", "Kettle 1", or "Tables" for work that needs no equipment. */
export function taskStation(problem: DayProblem, task: PlannedTask): string {
  const named = (list: readonly { id: string; label: string }[], id: string | null) => list.find((one) => one.id === id)?.label
  if (task.tableIndex !== null) return problem.fillTables > 1 ? `Fill table ${task.tableIndex + 1}` : 'Fill table'
  return named(problem.canners, task.cannerId) ?? named(problem.kettles, task.kettleId) ?? 'Tables'
}

/** Looks up what a task's words are made of: its batches, jars, minutes and headspace. */
export function taskFacts(problem: DayProblem, plan: DayPlan, task: PlannedTask): TaskFacts {
  const load = plan.loads.find(({ id }) => id === task.loadId)
  const batchIds = load?.batchParts.map(({ batchId }) => batchId) ?? (task.batchId === null ? [] : [task.batchId])
  const batches = plan.batches.filter(({ id }) => batchIds.includes(id))
  const preparation = problem.preparations.find(({ id }) => id === (load ?? batches[0])?.preparationId)
  const work = preparation ?? kettleWorkOf(problem, batches[0]?.preparationId)
  const inches = preparation ? headspaceOf(preparation) : null
  const jars = load ? load.batchParts.map((part) => part.jars.typical) : batches.map((batch) => batch.jars.typical)
  return {
    codes: batches.map(({ code }) => code).join(' and '),
    product: work ? productName(work.title) : '',
    noun: work ? productNoun(work.title) : '',
    jars: jars.reduce((sum, count) => sum + count, 0),
    jarSize: work?.jarSize ?? 'pint',
    minutes: load?.processMinutes ?? 0,
    psi: load?.psi ?? null,
    isPressure: preparation?.method === 'pressure',
    headspace: inches === null ? null : sayHeadspace(inches),
    isChilled: work !== undefined && preparation === undefined,
    restMinutes: preparation?.cycle.restMinutes ?? 0,
    jarBoilMinutes: preparation?.jarBoilMinutes ?? 0,
    washOff: washedOffBefore(problem, plan, task),
  }
}

type Sentences = Readonly<Record<PlanTaskKind, (facts: TaskFacts) => string>>

const counted = ({ jars, jarSize }: TaskFacts) => `${jars} ${jarName(jarSize, jars)}`

const ENGLISH: Sentences = {
  brief: () => 'Briefing: hands, hair, shoes, burns, who decides.',
  soak: ({ product }) => `Soak for ${product}.`,
  preheat: () => 'Heat the water.',
  prep: ({ codes, noun }) => `Wash, cut and measure for ${codes} (${noun}).`,
  'jar-heat': (facts) => `Boil the ${counted(facts)} for ${facts.codes}, ${facts.jarBoilMinutes} min.`,
  cook: ({ codes, noun }) => `Cook ${codes} (${noun}).`,
  hold: ({ codes }) => `Keep ${codes} hot until it is filled.`,
  fill: (facts) => {
    const first = facts.washOff.length > 0 ? `Wash the table first: ${facts.washOff.join(', ')} was on it. ` : ''
    return facts.isChilled
      ? `${first}Fill ${counted(facts)} of ${facts.codes}, then into the fridge or freezer: no canner.`
      : `${first}Fill ${counted(facts)} of ${facts.codes}. Leave ${facts.headspace ?? 'the headspace of the recipe'}.`
  },
  load: (facts) => `Load ${counted(facts)} of ${facts.codes}.`,
  'come-up': ({ isPressure }) => (isPressure ? 'Vent in full, close, bring to pressure.' : 'Start the clock only at a full boil.'),
  process: ({ minutes, psi }) =>
    psi === null
      ? `${minutes} min at a full boil. Boil lost: the full time again.`
      : `${minutes} min at ${psi} psi. Pressure lost: the full time again.`,
  rest: ({ isPressure, restMinutes }) =>
    isPressure ? 'Heat off, let the pressure fall by itself.' : `Heat off, lid off, wait ${restMinutes} min.`,
  unload: (facts) => `Lift ${counted(facts)} of ${facts.codes} out and leave them.`,
  wash: (facts) => `Wash ${counted(facts)} for ${facts.codes}, hot.`,
  label: ({ codes }) => `Labels for ${codes}.`,
  'clean-up': () => 'Clean up.',
  break: () => 'Break: sit down, drink, wash hands before you go back.',
}

const SPANISH_JARS: Readonly<Record<JarSize, readonly [one: string, many: string]>> = {
  'half-pint': ['frasco de media pinta', 'frascos de media pinta'],
  '12-oz': ['frasco de 12 oz', 'frascos de 12 oz'],
  pint: ['frasco de una pinta', 'frascos de una pinta'],
  'pint-and-half': ['frasco de pinta y media', 'frascos de pinta y media'],
  quart: ['frasco de un cuarto', 'frascos de un cuarto'],
  'half-gallon': ['frasco de medio galón', 'frascos de medio galón'],
}

const contados = ({ jars, jarSize }: TaskFacts) => `${jars} ${SPANISH_JARS[jarSize][jars === 1 ? 0 : 1]}`

const SPANISH: Sentences = {
  brief: () => 'Reunión: manos, pelo, zapatos, quemaduras, quién decide.',
  soak: ({ product }) => `Remojo para ${product}.`,
  preheat: () => 'Calentar el agua.',
  prep: ({ codes }) => `Lavar, cortar y medir para ${codes}.`,
  'jar-heat': (facts) => `Hervir ${contados(facts)} para ${facts.codes}, ${facts.jarBoilMinutes} min.`,
  cook: ({ codes }) => `Cocer ${codes}.`,
  hold: ({ codes }) => `Mantener ${codes} caliente hasta llenar.`,
  fill: (facts) =>
    `${facts.washOff.length > 0 ? `Primero lavar la mesa (alérgeno: ${facts.washOff.join(', ')}). ` : ''}Llenar ${contados(facts)} de ${facts.codes}. Espacio: ${facts.headspace ?? 'según la receta'}.`,
  load: (facts) => `Cargar ${contados(facts)} de ${facts.codes}.`,
  'come-up': ({ isPressure }) => (isPressure ? 'Purgar del todo, cerrar, subir a presión.' : 'El tiempo empieza con hervor fuerte.'),
  process: ({ minutes, psi }) =>
    psi === null
      ? `${minutes} min con hervor fuerte. Si se pierde el hervor: todo el tiempo otra vez.`
      : `${minutes} min a ${psi} psi. Si se pierde la presión: todo el tiempo otra vez.`,
  rest: ({ isPressure, restMinutes }) =>
    isPressure ? 'Apagar, dejar bajar la presión sola.' : `Apagar, quitar la tapa, esperar ${restMinutes} min.`,
  unload: (facts) => `Sacar ${contados(facts)} de ${facts.codes} y no tocarlos.`,
  wash: (facts) => `Lavar ${contados(facts)} para ${facts.codes}, con agua caliente.`,
  label: ({ codes }) => `Etiquetas para ${codes}.`,
  'clean-up': () => 'Limpieza.',
  break: () => 'Descanso: siéntese, beba, lávese las manos antes de volver.',
}

const SENTENCES: Readonly<Record<TaskLanguage, Sentences>> = { en: ENGLISH, es: SPANISH }
