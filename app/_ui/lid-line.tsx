/** How a sheet of work is closed: sunk is settled, domed wants somebody, flat has not been checked. */
export type Lid = 'sunk' | 'domed' | 'flat'

const RIMS = {
  sunk: 'M0 3H20C46 3 44 15 66 15S86 3 112 3H132',
  domed: 'M0 14H20C46 14 44 2.5 66 2.5S86 14 112 14H132',
} as const

const WORDS: Readonly<Record<Lid, string>> = { sunk: 'Settled', domed: 'Wants you', flat: 'Not checked yet' }

/** The line that closes a sheet at the top. Its shape is the state, so it also says it. */
export function LidLine({ lid, words = WORDS[lid] }: { lid: Lid; words?: string }) {
  const rim = lid === 'flat' ? undefined : RIMS[lid]
  return (
    <div className={`lid ${lid}`} role="img" aria-label={words}>
      <i />
      {rim && (
        <svg viewBox="0 0 132 18" aria-hidden="true">
          <path className="lid-ground" d={`${rim}V18H0Z`} />
          <path className="lid-rim" d={rim} />
        </svg>
      )}
      {rim && <i />}
    </div>
  )
}
