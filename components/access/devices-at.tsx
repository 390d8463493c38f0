import { useCallback, useEffect, useRef, useState } from 'react'
import { AdultRows, type AskedOfAdults } from '#components/access/adult-rows.tsx'
import { isRefused, type Refused, tell } from '#components/access/ask.ts'
import { CodeSigns } from '#components/access/code-field.tsx'
import { DeviceRow } from '#components/access/device-row.tsx'
import styles from '#components/access/devices-at.module.css'
import page from '#components/access/page.module.css'
import { QrCode } from '#components/access/qr.tsx'
import { RefusedSaid } from '#components/access/refused-said.tsx'
import { useAccessWords } from '#components/access/words.tsx'
import { useMonotonic } from '#components/live/server-time.ts'
import { Button } from '#components/ui/button.tsx'
import { Note } from '#components/ui/note.tsx'
import { Panel } from '#components/ui/panel.tsx'
import { BY_CODE, devicesAt } from '#lib/access/at-places.ts'
import { codeSoFar } from '#lib/access/code-entry.ts'
import type { DeviceList, GivenCode } from '#lib/access/http.ts'
import type { Role } from '#lib/service/roles.ts'

/** What a code is good for, by this device's own clock: the server's may differ. */
interface Shown extends GivenCode {
  /** Monotonic milliseconds when it is over. */
  readonly overAt: number
  /** Who was in when it was asked for. */
  readonly before: readonly string[]
}

const CODE_LASTS_MS = 600_000

/** The code large enough to be read from arm's length, and what the camera reads. */
function CodeShown({ shown }: { readonly shown: Shown }) {
  const { devices: words } = useAccessWords()
  const left = Math.max(0, shown.overAt - useMonotonic())
  const [address = '', ...others] = shown.addresses
  return (
    <div className={styles.code}>
      <div className={styles.qr}>
        <QrCode holds={address} label={words.qr} />
      </div>
      <div className={styles.say}>
        <p>{words.scan}</p>
        <p>{words.orType(address.replace(/#.*$/, ''))}</p>
        <p className={styles.signs}>
          <span className="visually-hidden">{shown.typed}</span>
          <CodeSigns code={codeSoFar(shown.typed)} />
        </p>
        <p className={styles.left}>{words.left(left)}</p>
        {others.length > 0 && (
          <p className={styles.left} data-aside="">
            {words.addresses}: {others.map((other) => other.replace(/#.*$/, '')).join(' · ')}
          </p>
        )}
      </div>
    </div>
  )
}

interface DevicesAtProps {
  readonly role: Role
  readonly list: DeviceList
  readonly onChanged: () => void
  /** What was done to an adult just now. */
  readonly said: string | null
  readonly onAdult: (asked: AskedOfAdults) => void
  readonly onClose: () => void
}

/** What is at a place, and the code that lets one more in. */
export function DevicesAt({ role, list, said, onChanged, onAdult, onClose }: DevicesAtProps) {
  const words = useAccessWords()
  const [shown, setShown] = useState<Shown | null>(null)
  const [refused, setRefused] = useState<Refused | null>(null)
  const [done, setDone] = useState(said)
  const here = devicesAt(role, list.devices)
  const isByCode = BY_CODE.includes(role)
  // Asked for once a place is opened; those who are in by then don't count as let in by it.
  const inNow = useRef(list.devices)
  inNow.current = list.devices
  const askCode = useCallback(async () => {
    setShown(null)
    setRefused(null)
    const answer = await tell<GivenCode>('/access/codes', { role })
    if (isRefused(answer)) setRefused(answer)
    else
      setShown({
        ...answer,
        overAt: performance.now() + CODE_LASTS_MS,
        before: inNow.current.map(({ device }) => device),
      })
  }, [role])
  useEffect(() => {
    if (isByCode) void askCode()
  }, [isByCode, askCode])
  const [timesUp, setTimesUp] = useState(false)
  useEffect(() => {
    setTimesUp(false)
    if (!shown) return
    const timer = setTimeout(() => setTimesUp(true), shown.overAt - performance.now())
    return () => clearTimeout(timer)
  }, [shown])
  const cameIn = shown ? here.find(({ device }) => !shown.before.includes(device)) : undefined
  const title = isByCode ? words.devices.letIn(role) : words.place[role]
  return (
    <Panel
      className={page.panel ?? ''}
      title={title}
      label={title}
      back={words.devices.close}
      onBack={onClose}
    >
      <div className={styles.at}>
        {isByCode ? (
          cameIn || timesUp ? (
            <div className={styles.done}>
              <Note kind={cameIn ? 'done' : 'watch'} role="status">
                {cameIn ? words.devices.cameIn(cameIn.name) : words.devices.over}
              </Note>
              <Button kind="main" size="large" onClick={() => void askCode()}>
                {words.devices.newCode}
              </Button>
            </div>
          ) : (
            shown && <CodeShown shown={shown} />
          )
        ) : (
          <p>{words.devices.adultsHere}</p>
        )}
        <div className={styles.side}>
          <RefusedSaid refused={refused} />
          {done !== null && (
            <Note kind="done" role="status">
              {done}
            </Note>
          )}
          <AdultRows role={role} list={list} onAdult={onAdult} />
          <ul className={styles.list} aria-label={words.devices.title}>
            {here.map((device) => (
              <DeviceRow
                key={device.device}
                device={device}
                onRemoved={(why) => {
                  setRefused(why)
                  setDone(why === null ? words.devices.removed(device.name) : null)
                  onChanged()
                }}
              />
            ))}
          </ul>
          {(role === 'lead' || role === 'in-charge') && (
            <Button onClick={() => onAdult({ to: 'add' })}>{words.devices.addAdult}</Button>
          )}
        </div>
      </div>
    </Panel>
  )
}
