import 'server-only'
import { createHmac } from 'node:crypto'
import { sha256 } from '@/lib/commands/canonical-json'
import { env } from '@/lib/env'

/**
 * The secret at the end of an invitation's address, 43 characters.
 *
 * It is made from the invitation's id and the site's secret, so that the database holds only its hash
 * and a repeated tap shows the same address.
 */
export const inviteToken = (inviteId: string): string =>
  createHmac('sha256', env().authSecret).update(`invitation ${inviteId}`).digest('base64url')

/** What is kept of a token. */
export const hashInviteToken = (token: string): string => sha256(token)

/** The address that is shown once, or mailed. */
export const inviteAddress = (inviteId: string): string => `${env().baseUrl}/invite/${inviteToken(inviteId)}`
