import { answerAuth } from '@/lib/auth/answer-auth'

export { answerAuth as GET, answerAuth as POST }
