import { useState } from 'react'
import { LabelThen } from '#components/larder/label-then.tsx'
import styles from '#components/larder/larder.module.css'
import { useLarderWords } from '#components/larder/larder-words.tsx'
import { TakeInto, type Told } from '#components/larder/take-into.tsx'
import { Button } from '#components/ui/button.tsx'
import { Field } from '#components/ui/field.tsx'
import type { LarderCommand } from '#lib/larder/command.ts'
import type { LotDiscardReason } from '#lib/larder/event.ts'
import type { LotBound } from '#lib/larder/lot.ts'
import type { LotShown } from '#lib/larder/shelf-view.ts'

const REASON: Readonly<Record<LotBound, LotDiscardReason>> = {
  date: 'past-date',
  'cooling-missed': 'not-cooled',
  'out-of-limits': 'out-of-limits',
}

interface LotJobsProps {
  readonly lot: LotShown
  readonly ask: (command: LarderCommand, passphrase?: string) => void
  /** What came of taking it into a service. */
  readonly onTold: (told: Told) => void
  readonly onBack: () => void
}

/** What may be done with a lot, in the notch that grows out of it. */
export function LotJobs({ lot, ask, onTold, onBack }: LotJobsProps) {
  const words = useLarderWords()
  const [initials, setInitials] = useState('')
  const [degrees, setDegrees] = useState('')
  const [probe, setProbe] = useState('')
  const by = { lot: lot.lot, ...(initials.trim() === '' ? {} : { initials: initials.trim() }) }
  const isUnsigned = initials.trim() === ''
  const signs = { disabled: isUnsigned, ...(isUnsigned ? { sub: words.needsInitials } : {}) }
  const tenths = Math.round(Number(degrees) * 10)
  const isReading = degrees.trim() !== '' && Number.isFinite(tenths) && probe.trim() !== ''
  const isRead = lot.bound === null && (lot.kept === 'cold' || lot.kept === 'cooling')
  const [changed] = lot.relabelled
  const read = () =>
    ask({
      type: 'readLot',
      ...by,
      reading: { tenths, scale: lot.scale, probe: probe.trim(), where: 'middle-stirred' },
    })
  return (
    <section className={styles.jobs} data-notch-panel aria-label={words.jobs}>
      <div className={styles.fields}>
        <Field
          label={words.initials}
          value={initials}
          maxLength={6}
          onChange={(event) => setInitials(event.target.value)}
        />
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
      </div>
      {lot.bound === null && changed === undefined && (
        <TakeInto lot={lot} initials={initials.trim()} onTold={onTold} />
      )}
      {lot.bound === null && changed !== undefined && (
        <LabelThen key={changed.ingredient} lot={lot.lot} changed={changed} ask={ask} />
      )}
      <div className={styles.acts}>
        {isRead && (
          <Button kind="main" {...signs} disabled={isUnsigned || !isReading} onClick={read}>
            {words.read}
          </Button>
        )}
        {lot.bound === null && (
          <Button onClick={() => ask({ type: 'anotherTookLot', ...by })}>{words.tookIt}</Button>
        )}
        {lot.bound === null && lot.kept === 'cold' && (
          <Button {...signs} onClick={() => ask({ type: 'freezeLot', ...by })}>
            {words.freeze}
          </Button>
        )}
        {lot.kept === 'frozen' && (
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
              reason: lot.bound === null ? 'other' : REASON[lot.bound],
            })
          }
        >
          {words.throwOut}
        </Button>
        <Button onClick={onBack}>{words.back}</Button>
      </div>
    </section>
  )
}
