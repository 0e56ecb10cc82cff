/** Zones that kitchens are likely to lie in, before all others. */
const FIRST = [
  'America/New_York',
  'America/Chicago',
  'America/Denver',
  'America/Phoenix',
  'America/Los_Angeles',
  'America/Anchorage',
  'Pacific/Honolulu',
  'America/Halifax',
  'America/Toronto',
  'America/Winnipeg',
  'America/Vancouver',
  'Europe/London',
] as const

const everyZone: readonly string[] = Intl.supportedValuesOf('timeZone')

/** Every time zone of the IANA database that this machine knows, the likely ones first: "New York (America)". */
export const TIME_ZONES: readonly { readonly value: string; readonly label: string }[] = [
  ...FIRST,
  ...everyZone.filter((zone) => !FIRST.includes(zone as (typeof FIRST)[number])),
].map((value) => ({ value, label: zoneName(value) }))

function zoneName(zone: string): string {
  const [area = '', ...place] = zone.split('/')
  return place.length === 0 ? zone : `${place.reverse().join(', ').replaceAll('_', ' ')} (${area})`
}
