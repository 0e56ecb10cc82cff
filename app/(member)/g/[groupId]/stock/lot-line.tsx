import { CommandForm } from '@/app/_forms/command-form'
import { FieldEntry, SelectEntry } from '@/app/_forms/entries'
import { Fold } from '@/app/_ui/fold'
import { Source } from '@/app/_ui/source'
import { SubmitButton } from '@/app/_ui/submit-button'
import { freshKey } from '@/lib/http/fresh-key'
import type { StockLot } from '@/lib/queries/list-stock'
import { supplyName } from '@/shared/kitchen/equipment'
import { jarNameWithVolume } from '@/shared/kitchen/jar-sizes'
import { sayShortDate } from '@/shared/time/calendar-date'
import { sayLidVerdict } from '@/shared/wording/say-lid-verdict'

interface LotLineProps {
  readonly lot: StockLot
  readonly groupId: string
  readonly owners: readonly { value: string; label: string }[] | null
}

/** One lot with its count, and the form to count it again. */
export function LotLine({ lot, groupId, owners }: LotLineProps) {
  const { id, lotCode, kind, count, jarSize, mouth, household, boughtOn, note, chipped, isShopJar } = lot
  return (
    <li>
      <div className="thing-head">
        <h3>{lotCode}</h3>
        <p>
          <span className="num">{count.toLocaleString('en-US')}</span> {supplyName(kind, count)}
        </p>
      </div>
      <p>
        {jarSize && `${jarNameWithVolume(jarSize)}, `}
        {mouth} mouth, {household ? `lent by ${household}` : 'the group’s own'}
        {boughtOn ? `, bought on ${sayShortDate(boughtOn)}` : ', age not known'}
      </p>
      {note && <p className="quiet">{note}</p>}
      {chipped > 0 && <p>{chipped} of them chipped: left out.</p>}
      {isShopJar && <p>Shop jars: more of them break, and never under pressure.</p>}
      <Verdict lot={lot} />
      {owners && (
        <Fold summary={`Count ${lotCode} again`} id={`lot-${id}`}>
          <CountForm lot={lot} groupId={groupId} owners={owners} />
        </Fold>
      )}
    </li>
  )
}

function Verdict({ lot: { verdict, count } }: { lot: StockLot }) {
  if (!verdict || count === 0) return null
  const { words, instead, source } = sayLidVerdict(verdict)
  if (verdict.isUsable) return <p className="quiet">{words}</p>
  return (
    <div className="resting">
      <p>
        <b>{words}</b>
      </p>
      {instead && (
        <p>
          <b>Instead:</b> {instead}
        </p>
      )}
      {source && <Source publication={source} />}
    </div>
  )
}

function CountForm({ lot, groupId, owners }: LotLineProps & { owners: NonNullable<LotLineProps['owners']> }) {
  const { id, version, count, kind, boughtOn, householdId, note, chipped, isShopJar } = lot
  return (
    <CommandForm
      command="change-supply"
      groupId={groupId}
      formKey={freshKey()}
      next={`/g/${groupId}/stock`}
      fixed={{ supplyId: id, version }}
      className="form side"
    >
      <FieldEntry
        name="count"
        label="Count now"
        hint="0 takes the lot out of stock; its code stays on record."
        type="number"
        inputMode="numeric"
        min={0}
        max={100000}
        unit={supplyName(kind, 2)}
        first={count}
        required
        short
      />
      {kind === 'jar' && <JarFields chipped={chipped} isShopJar={isShopJar} />}
      <FieldEntry name="boughtOn" label="Bought on" type="date" first={boughtOn} required={false} short />
      <SelectEntry name="householdId" label="Lent by" ask="The group’s own" options={owners} first={householdId} required={false} />
      <FieldEntry name="note" label="Note" first={note} required={false} maxLength={120} />
      <div className="full">
        <SubmitButton kind="plain" sending="Saving">
          Save the count
        </SubmitButton>
      </div>
    </CommandForm>
  )
}

/** What only jars have: chips in the rim, and glass that was made for a shop's shelf. */
export function JarFields({ chipped, isShopJar }: { chipped: number; isShopJar: boolean }) {
  return (
    <>
      <FieldEntry
        name="chipped"
        label="Of them chipped"
        hint="A nick or a crack in the rim: left out."
        type="number"
        inputMode="numeric"
        min={0}
        first={chipped}
        required={false}
        short
      />
      <SelectEntry
        name="isShopJar"
        label="What glass"
        options={[
          { value: 'no', label: 'canning jars' },
          { value: 'yes', label: 'shop jars: never under pressure' },
        ]}
        first={isShopJar ? 'yes' : 'no'}
      />
    </>
  )
}
