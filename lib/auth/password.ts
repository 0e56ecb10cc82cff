import 'server-only'
import { hash, verify } from '@node-rs/argon2'

/**
 * argon2id with 19 MiB, two passes and one lane.
 *
 * Source: OWASP Password Storage Cheat Sheet, Argon2id, minimum configuration.
 */
const SETTINGS = { algorithm: 2, memoryCost: 19_456, timeCost: 2, parallelism: 1 } as const

export const hashPassword = (password: string): Promise<string> => hash(password.normalize('NFKC'), SETTINGS)

/** A hash of no password, so that an unknown e-mail costs the same time as a wrong password. */
let decoy: Promise<string> | undefined

/** True when the password fits. An absent hash is checked against a decoy and is always false. */
export async function passwordFits(password: string, passwordHash: string | null | undefined): Promise<boolean> {
  decoy ??= hashPassword('no one has this password')
  const fits = await verify(passwordHash ?? (await decoy), password.normalize('NFKC'))
  return fits && Boolean(passwordHash)
}
