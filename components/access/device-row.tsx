import { useState } from 'react'
import { isRefused, type Refused, tell } from '#components/access/ask.ts'
import { waitingHere } from '#components/access/waiting-here.ts'
import { useAccessWords } from '#components/access/words.tsx'
import { Button } from '#components/ui/button.tsx'
import type { ListedDevice } from '#lib/access/http.ts'

/** One that is in, since when; sent out, or this one signed off, with one confirmation. */
export function DeviceRow({
  device,
  onRemoved,
}: {
  readonly device: ListedDevice
  readonly onRemoved: (refused: Refused | null) => void
}) {
  const { devices: words } = useAccessWords()
  const [isSure, setSure] = useState(false)
  const [waiting, setWaiting] = useState(0)
  const { timeZone } = Intl.DateTimeFormat().resolvedOptions()
  const ask = async () => {
    setSure(true)
    if (!device.isYou) return
    const counts = (await waitingHere()).map(({ count }) => count)
    setWaiting(counts.reduce((sum, count) => sum + count, 0))
  }
  const remove = async () => {
    const answer = await (device.isYou
      ? tell('/access/sign-off', {})
      : tell('/access/remove', { device: device.device }))
    if (isRefused(answer)) onRemoved(answer)
    else if (device.isYou) location.assign('/')
    else onRemoved(null)
  }
  return (
    <li data-here={device.isHere || undefined}>
      {isSure ? (
        <>
          <p>
            {device.isYou ? words.signOffSure : words.removeSure(device.name)}
            {waiting > 0 && ` ${words.signOffWaits(waiting)}`}
          </p>
          <Button kind="no" onClick={() => void remove()}>
            {device.isYou ? words.signOffYes : words.removeYes}
          </Button>
          <Button kind="quiet" onClick={() => setSure(false)}>
            {words.removeNo}
          </Button>
        </>
      ) : (
        <>
          <p>
            <b>{device.name}</b> {device.isHere ? words.here : words.away(device.seenAt, timeZone)}
            <span>
              {words.since(device.joinedAt, timeZone)}
              {device.isYou && ` · ${words.you}`}
            </span>
          </p>
          <Button
            kind="quiet"
            aria-label={device.isYou ? undefined : words.removeName(device.name)}
            onClick={() => void ask()}
          >
            {device.isYou ? words.signOff : words.remove}
          </Button>
        </>
      )}
    </li>
  )
}
