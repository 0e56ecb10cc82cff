import type { DayPlan, PlannedTask, PlanTaskKind } from '@/shared/planning/day-plan'
import type { DayProblem } from '@/shared/planning/day-problem'
import { sayTask, type TaskFacts, type TaskLanguage, taskFacts, taskStation } from '@/shared/wording/say-task'

/** Who is called out on the wall and where: "Gil, K3", "Cleo, fill table", or "Everybody" for work that has no station. */
export function sayCalled(problem: DayProblem, task: PlannedTask): string {
  const people = problem.people.filter(({ id }) => task.peopleIds.includes(id))
  const who = people.length > 3 ? 'Everybody' : people.map(({ name }) => name).join(', ')
  const station = taskStation(problem, task)
  if (task.tableIndex !== null) return `${who}, ${station.charAt(0).toLowerCase()}${station.slice(1)}`
  return task.cannerId === null && task.kettleId === null ? who : `${who}, ${station}`
}

/** What to do, as short as it can be read across a kitchen: "8 jars of J4. Leave ¼ in (6 mm)." Two lines of a wall, where a list has a sentence. */
export function sayAct(problem: DayProblem, plan: DayPlan, task: PlannedTask, language: TaskLanguage = 'en'): string {
  const short = SHORT[language][task.kind]?.(taskFacts(problem, plan, task)) ?? sayTask(problem, plan, task, language)
  return language === 'en' ? `${short.charAt(0).toLowerCase()}${short.slice(1)}` : short
}

type ShortSentences = Partial<Readonly<Record<PlanTaskKind, (facts: TaskFacts) => string>>>

const jarsOf = ({ jars, codes }: TaskFacts) => `${jars} ${jars === 1 ? 'jar' : 'jars'} of ${codes}`
const frascosDe = ({ jars, codes }: TaskFacts) => `${jars} ${jars === 1 ? 'frasco' : 'frascos'} de ${codes}`

const SHORT: Readonly<Record<TaskLanguage, ShortSentences>> = {
  en: {
    brief: () => 'Hands, hair, shoes, burns, who decides.',
    fill: (facts) => `${jarsOf(facts)}. Leave ${facts.headspace ?? 'the recipe’s headspace'}.`,
    load: (facts) => `Load ${jarsOf(facts)}.`,
    unload: (facts) => `Lift ${jarsOf(facts)} out, leave them.`,
  },
  es: {
    brief: () => 'Manos, pelo, zapatos, quemaduras, quién decide.',
    fill: (facts) => `${frascosDe(facts)}. Espacio: ${facts.headspace ?? 'el de la receta'}.`,
    load: (facts) => `Cargar ${frascosDe(facts)}.`,
    unload: (facts) => `Sacar ${frascosDe(facts)}, no tocarlos.`,
  },
}
