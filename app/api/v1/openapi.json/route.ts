import { describeApi } from '@/lib/http/describe-api'

/** The description of everything under /api/v1, made from the schemas that validate it. */
export function GET(): Response {
  return Response.json(describeApi(), { headers: { 'cache-control': 'public, max-age=300' } })
}
