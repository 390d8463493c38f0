import { useMemo, useState } from 'react'
import { useKnockForNew } from '#components/device/use-sound.ts'
import type { HandOverView } from '#lib/rooms/shelf/views/hand-over.ts'

/**
 * Knocks for what may no longer be given out and for guests to be found. What was said before a
 * new one may be of that very build, so it is hushed.
 */
export const useAlarms = (view: HandOverView, hush: () => void): void => {
  const alarms = useMemo(
    () => [...view.toFind, ...view.held].map((one) => `${one.name}/${one.at}`),
    [view],
  )
  const [known, setKnown] = useState(alarms)
  useKnockForNew('stop', alarms)
  if (alarms === known) return
  setKnown(alarms)
  if (alarms.some((one) => !known.includes(one))) hush()
}
