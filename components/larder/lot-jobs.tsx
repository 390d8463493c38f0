import { useState } from 'react'
import { LabelThen } from '#components/larder/label-then.tsx'
import styles from '#components/larder/larder.module.css'
import { useLarderWords } from '#components/larder/larder-words.tsx'
import { firstAsked } from '#components/larder/lot-said.ts'
import { TakeInto, type Told } from '#components/larder/take-into.tsx'
import { TookIt } from '#components/larder/took-it.tsx'
import { Button } from '#components/ui/button.tsx'
import { Choice } from '#components/ui/choice.tsx'
import { Field } from '#components/ui/field.tsx'
import type { LarderCommand } from '#lib/larder/command.ts'
import type { LotDiscardReason } from '#lib/larder/event.ts'
import type { LotBound } from '#lib/larder/lot.ts'
import type { LotShown } from '#lib/larder/shelf-view.ts'
import { stayAsked } from '#lib/larder/stay.ts'

const REASON: Readonly<Record<LotBound, LotDiscardReason>> = {
  date: 'past-date',
  'cooling-missed': 'not-cooled',
  'out-of-limits': 'out-of-limits',
}

interface LotJobsProps {
  readonly lot: LotShown
  /** Of the same food the one that goes before it; null where it goes first. */
  readonly older: LotShown | null
  /** Epoch milliseconds. */
  readonly now: number
  readonly onOlder: (lot: string) => void
  readonly ask: (command: LarderCommand, passphrase?: string) => void
  /** What came of taking it into a service. */
  readonly onTold: (told: Told) => void
  readonly onBack: () => void
}

/** What may be done with a lot, in the notch that grows out of it: what is asked first, then the rest, quiet. */
export function LotJobs({ lot, older, now, ask, onTold, onOlder, onBack }: LotJobsProps) {
  const words = useLarderWords()
  const [initials, setInitials] = useState('')
  const [degrees, setDegrees] = useState('')
  const [probe, setProbe] = useState('')
  /** A claim: nobody stays until it is said. */
  const [until, setUntil] = useState<number | null>(null)
  const stays = stayAsked(lot, now)
  const first = firstAsked(lot)
  const [open, setOpen] = useState<'reading' | 'take' | null>(null)
  const by = { lot: lot.lot, ...(initials.trim() === '' ? {} : { initials: initials.trim() }) }
  const isUnsigned = initials.trim() === ''
  const signs = { disabled: isUnsigned, ...(isUnsigned ? { sub: words.needsInitials } : {}) }
  const tenths = Math.round(Number(degrees) * 10)
  const isReading = degrees.trim() !== '' && Number.isFinite(tenths)
  const lacks = !isReading
    ? words.lacksDegrees
    : probe.trim() === ''
      ? words.lacksProbe
      : isUnsigned
        ? words.needsInitials
        : null
  const canRead = first !== 'bin' && (lot.kept === 'cold' || lot.kept === 'cooling')
  const isRead = canRead && (first !== 'label' || open === 'reading')
  const isTaken = first === 'take' || (first === 'reading' && open === 'take')
  const [changed] = lot.relabelled
  const read = () =>
    ask({
      type: 'readLot',
      ...by,
      reading: { tenths, scale: lot.scale, probe: probe.trim(), where: 'middle-stirred' },
      ...(until === null ? {} : { presentUntil: until }),
    })
  const signed = (
    <Field
      label={words.initials}
      value={initials}
      maxLength={6}
      onChange={(event) => setInitials(event.target.value)}
    />
  )
  return (
    <section className={styles.jobs} data-notch-panel data-first={first} aria-label={words.jobs}>
      {first === 'label' && changed !== undefined && (
        <LabelThen key={changed.ingredient} lot={lot.lot} changed={changed} ask={ask} />
      )}
      <div className={styles.doing}>
        <div className={styles.fields}>
          {isRead && (
            <>
              <Field
                label={words.degrees}
                value={degrees}
                inputMode="decimal"
                maxLength={6}
                side={<span>{words.scale[lot.scale]}</span>}
                onChange={(event) => setDegrees(event.target.value)}
              />
              <Field
                label={words.probe}
                value={probe}
                maxLength={40}
                onChange={(event) => setProbe(event.target.value)}
              />
            </>
          )}
          {signed}
        </div>
        {isRead && stays.length > 0 && (
          <Choice
            legend={words.whoStays}
            ways={stays.map((at) => ({
              id: `${at}`,
              label: words.sayTime(at, lot.timeZone),
            }))}
            chosen={until === null ? null : `${until}`}
            onChoose={(at) => setUntil(Number(at) === until ? null : Number(at))}
          />
        )}
        {isRead && (
          <Button
            className={styles.record ?? ''}
            kind={first === 'reading' ? 'main' : 'plain'}
            disabled={lacks !== null}
            {...(lacks === null ? {} : { sub: lacks })}
            onClick={read}
          >
            {words.read}
          </Button>
        )}
      </div>
      {isTaken && <TakeInto {...{ lot, older, onOlder, onTold }} initials={initials.trim()} />}
      <div className={styles.acts}>
        {first === 'label' && canRead && open !== 'reading' && (
          <Button kind="quiet" onClick={() => setOpen('reading')}>
            {words.toRead}
          </Button>
        )}
        {first === 'reading' && lot.barred === null && open !== 'take' && (
          <Button kind="quiet" onClick={() => setOpen('take')}>
            {words.take.title}
          </Button>
        )}
        {(lot.barred === null || lot.barred.code === 'lot-unread') && lot.bound === null && (
          <TookIt lot={lot} onTook={() => ask({ type: 'anotherTookLot', ...by })} />
        )}
        {first !== 'bin' && first !== 'label' && lot.kept === 'cold' && lot.barred === null && (
          <Button kind="quiet" {...signs} onClick={() => ask({ type: 'freezeLot', ...by })}>
            {words.freeze}
          </Button>
        )}
        {first !== 'bin' && lot.kept === 'frozen' && (
          <Button {...signs} onClick={() => ask({ type: 'thawLot', ...by })}>
            {words.thaw}
          </Button>
        )}
        <Button
          kind="no"
          {...signs}
          onClick={() =>
            ask({
              type: 'throwOutLot',
              ...by,
              reason:
                lot.bound !== null
                  ? REASON[lot.bound]
                  : lot.barred?.code === 'lot-bound'
                    ? REASON[lot.barred.why]
                    : 'other',
            })
          }
        >
          {words.throwOut}
        </Button>
        <Button kind="quiet" onClick={onBack}>
          {words.back}
        </Button>
      </div>
    </section>
  )
}
