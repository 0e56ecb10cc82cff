import { describe, expect, it } from 'vitest'
import { addressInUse, linkIsOver, linkNotMailed, noConnection, noFit, signInProblem, tooManyTries } from '@/shared/wording/account'
import { changedMeanwhile } from '@/shared/wording/changed-meanwhile'
import { inviteIsOver, inviteProblem } from '@/shared/wording/invite'
import { sayLidVerdict } from '@/shared/wording/say-lid-verdict'
import { judgeLids } from '@/shared/supplies/lid-age'

const ALL = [
  noFit(),
  tooManyTries(),
  linkIsOver(),
  linkNotMailed(),
  addressInUse(),
  noConnection(),
  changedMeanwhile('Alder Lane Hall'),
  inviteIsOver('expired'),
  inviteIsOver('used'),
  inviteIsOver('revoked'),
]

describe('a refusal', () => {
  it.each(ALL.map((refusal) => [refusal.code, refusal] as const))('%s says what, why and what instead', (_, { what, why, instead }) => {
    for (const part of [what, why, instead]) expect(part).toMatch(/^[A-Z].*\.$/)
    expect([what, why, instead].join(' ')).not.toMatch(/!/)
  })

  it('of a sign-in says the same for every address', () => {
    expect(signInProblem('CredentialsSignin')).toEqual(noFit())
    expect(signInProblem('anything else')?.status).toBe(503)
    expect(signInProblem(undefined)).toBeNull()
  })
})

describe('an invitation', () => {
  const now = new Date('2027-08-01T12:00:00Z')
  const open = { revokedAt: null, usedAt: null, expiresAt: new Date('2027-08-02T12:00:00Z') }

  it('may be taken up until the moment it expires', () => {
    expect(inviteProblem(open, now)).toBeNull()
    expect(inviteProblem({ ...open, expiresAt: now }, now)).toBe('expired')
  })

  it('that was taken back says so first', () => {
    expect(inviteProblem({ revokedAt: now, usedAt: now, expiresAt: now }, now)).toBe('revoked')
    expect(inviteProblem({ ...open, usedAt: now, expiresAt: now }, now)).toBe('used')
  })
})

describe('lids', () => {
  it('say their age, the limit and whose guidance it is', () => {
    const lot = { mouth: 'regular', count: 24, since: '2020-08-01', isUsed: false } as const
    expect(sayLidVerdict(judgeLids(lot, '2027-08-26'))).toMatchObject({
      words: 'Not usable: 7 years, more than 3 years.',
      source: expect.stringContaining('Utah State University Extension'),
    })
    expect(sayLidVerdict(judgeLids({ ...lot, since: '2027-08-01' }, '2027-08-26')).words).toBe('Usable: 1 month old.')
    expect(sayLidVerdict(judgeLids({ ...lot, since: '2027-08-26' }, '2027-08-26')).words).toBe('Usable: new.')
  })
})
