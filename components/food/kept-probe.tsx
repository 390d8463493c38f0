import { type ReactNode, useState } from 'react'
import { ProbeFields } from '#components/job/probe-fields.tsx'
import styles from '#components/job/reading-pad.module.css'
import { useFoodWords } from '#components/job/use-food-words.ts'
import type { ReadingForm } from '#components/job/use-reading.ts'
import { Button } from '#components/ui/button.tsx'

interface KeptProbeProps {
  readonly form: ReadingForm
  /** A button that stands beside what is kept. */
  readonly beside: ReactNode
  /** There is no room for it while the fields are open. */
  readonly isCrowded: boolean
}

/** Place, probe and initials in one line once all of them are kept from the reading before. */
export function KeptProbe({ form, beside, isCrowded }: KeptProbeProps) {
  const words = useFoodWords()
  const { entry, limit } = form
  const { where, probe, initials } = entry
  const [isOpen, setOpen] = useState(where === null || probe === '' || initials === '')
  if (isOpen || where === null)
    return (
      <>
        <ProbeFields form={form} />
        {!isCrowded && beside}
      </>
    )
  return (
    <div className={styles.probe}>
      <div className={styles.fields}>
        <Button sub={words.round.change} onClick={() => setOpen(true)}>
          {words.round.kept(words.readings.whereIs[where], probe, initials)}
        </Button>
        {beside}
      </div>
      {limit && (
        <p className={styles.limit}>
          <b>
            {words.readings.limitIs} {words.readings.limit(limit, entry.scale)}
          </b>{' '}
          <small>{words.readings.decides}</small>
        </p>
      )}
    </div>
  )
}
