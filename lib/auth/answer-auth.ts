import 'server-only'
import NextAuth from 'next-auth'
import { authOptions } from './auth-options'

type Handler = (request: Request, context: unknown) => Promise<Response>

/** next-auth's own pages and callbacks, under /api/auth. */
export const answerAuth: Handler = (request, context) => (NextAuth(authOptions()) as Handler)(request, context)
