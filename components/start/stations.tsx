import { useState } from 'react'
import { tell } from '#components/access/ask.ts'
import { useAccessWords } from '#components/access/words.tsx'
import styles from '#components/start/stations.module.css'
import type { AccessNow, StationDrawn } from '#lib/access/http.ts'
import { mayOpen } from '#lib/access/open-here.ts'

/** A station's line as small as a word: its wells with their pans. */
function SmallLine({ wells }: { readonly wells: StationDrawn['wells'] }) {
  return (
    <span className={styles.line} aria-hidden="true">
      {wells.map((pans, well) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: wells are told by their place alone
        <span key={well}>
          {Array.from({ length: pans }, (_, pan) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: pans are told by their place alone
            <i key={pan} />
          ))}
        </span>
      ))}
    </span>
  )
}

/** The house's stations, of which a lead's device is at one; and the demo beside them, opened and closed. */
export function Stations({
  now,
  again,
}: {
  readonly now: AccessNow
  readonly again: () => Promise<void>
}) {
  const words = useAccessWords().start
  const [busy, setBusy] = useState(false)
  const [failed, setFailed] = useState(false)
  const { you, page, stations, station, demoIsOpen } = now
  const mayChoose = you !== null && mayOpen(now, 'lead')
  // Where nobody is in, only the laptop itself may; asked there, it is told if it may not.
  const maySetDemo = mayChoose || now.mayWalkDemo
  const isBare = stations.length === 0

  const ask = async (path: string, body: object, then: string | null): Promise<void> => {
    setBusy(true)
    const { code } = await tell(path, body)
    setBusy(false)
    setFailed(code !== 'done')
    if (code === 'done' && then !== null) location.assign(then)
    else await again()
  }
  const turnTo = (id: string) =>
    ask('/access/station', { device: you?.device ?? '', station: id }, location.search ? '/' : null)

  return (
    <section className={styles.stations} aria-label={words.stations}>
      {isBare && (
        <p className={styles.acts}>
          <b>{mayOpen(now, 'counter') ? words.onlyDemo : words.demoAway}</b>
          {mayChoose ? (
            <a href="/menu" data-kind="main">
              {words.setUp}
            </a>
          ) : (
            <span>{words.setUpHow}</span>
          )}
        </p>
      )}
      {!isBare && (page === 'demo' || (stations.length > 1 && mayChoose)) && (
        <ul>
          {stations.map((one) => (
            <li key={one.id}>
              <button
                type="button"
                aria-pressed={page === 'own' && one.id === station}
                disabled={busy || !mayChoose}
                onClick={() => void turnTo(one.id)}
              >
                <b>{one.name}</b>
                <SmallLine wells={one.wells} />
                <span>{one.isOpen ? words.isOpen : words.isShut}</span>
              </button>
            </li>
          ))}
        </ul>
      )}
      {!isBare && (
        <p className={styles.acts}>
          {mayChoose && <a href="/menu">{words.toMenu}</a>}
          {page === 'demo' && <a href="/">{words.toOwn}</a>}
          {page === 'own' && demoIsOpen && maySetDemo && <a href="/?demo">{words.toDemo}</a>}
          {maySetDemo && !demoIsOpen && (
            <button
              type="button"
              disabled={busy}
              onClick={() => void ask('/access/demo', { open: true }, '/?demo')}
            >
              {words.openDemo}
            </button>
          )}
          {maySetDemo && demoIsOpen && (
            <button
              type="button"
              disabled={busy}
              onClick={() =>
                void ask('/access/demo', { open: false }, page === 'demo' ? '/' : null)
              }
            >
              {words.closeDemo}
            </button>
          )}
        </p>
      )}
      <p role="status">{failed ? words.notDone : ''}</p>
    </section>
  )
}
