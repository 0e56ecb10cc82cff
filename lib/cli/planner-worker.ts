import { parentPort } from 'node:worker_threads'
import { answerPlanQuestion, type Asked, type PlanQuestion } from '@/shared/day/plan-questions'

/** One question at a time: whoever asks waits for the answer before asking the next. */
export type PlanOrder = { readonly kind: PlanQuestion; readonly asked: Asked<PlanQuestion> }

parentPort?.on('message', ({ kind, asked }: PlanOrder) => parentPort?.postMessage(answerPlanQuestion(kind, asked)))
