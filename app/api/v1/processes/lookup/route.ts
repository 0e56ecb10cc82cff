import { answerLookup } from '@/lib/http/answer-lookup'

export { answerLookup as POST }
