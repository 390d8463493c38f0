import { useEffect, useState } from 'react'
import { isRefused, look, tell } from '#components/access/ask.ts'
import styles from '#components/menu/menu.module.css'
import { NotIn } from '#components/menu/not-in.tsx'
import { useMenuWords } from '#components/menu/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { Field } from '#components/ui/field.tsx'
import { Note } from '#components/ui/note.tsx'
import { Panel } from '#components/ui/panel.tsx'
import type { BeginStation, MenuStations } from '#lib/editor/http.ts'

/** What the browser's clock is set to: proposed, and asked about in the house. */
const hereZone = (): string => Intl.DateTimeFormat().resolvedOptions().timeZone

/** The stations of the house, and what another may begin from. */
export function StationsScreen({ onStation }: { readonly onStation: (id: string) => void }) {
  const { screen: words } = useMenuWords()
  const [seen, setSeen] = useState<MenuStations | null>(null)
  const [lost, setLost] = useState<string | null>(null)
  const [from, setFrom] = useState('nothing')
  const [name, setName] = useState('')
  const [isBusy, setBusy] = useState(false)
  const [hasFailed, setFailed] = useState(false)
  useEffect(() => {
    let isShown = true
    void look<MenuStations>('/menu/stations').then((answer) => {
      if (!isShown) return
      if (isRefused(answer)) setLost(answer.code)
      else setSeen(answer)
    })
    return () => {
      isShown = false
    }
  }, [])
  if (seen === null) return <NotIn lost={lost} />
  const begin = async () => {
    if (isBusy || name.trim() === '') return
    setBusy(true)
    setFailed(false)
    const asked: BeginStation = { from, name: name.trim(), timeZone: hereZone() }
    const answer = await tell<{ readonly station: string }>('/menu/begin', asked)
    setBusy(false)
    if (isRefused(answer)) return setFailed(true)
    onStation(answer.station)
  }
  const ways = [
    { from: 'nothing', name: words.fromNothing, why: words.fromNothingWhy },
    { from: 'demo', name: words.fromDemo, why: words.demoWhy },
    ...seen.sets
      .filter((one) => one.from !== 'nothing' && one.from !== 'demo')
      .map((one) => ({ ...one, why: words.fromSet })),
    ...seen.stations.map((one) => ({
      from: one.station,
      name: words.fromStation(one.name),
      why: words.copyWhy,
    })),
  ]
  return (
    <main className={styles.page}>
      <header className={styles.top}>
        <h1>{words.title}</h1>
        <p className={styles.links}>
          <a href="/menu/carry">{words.toCarry}</a>
          <a href="/">{words.toFirst}</a>
        </p>
      </header>
      {seen.stations.length > 0 && (
        <Panel title={words.stations} label={words.stations}>
          <ul className={styles.stations}>
            {seen.stations.map((one) => (
              <li key={one.station}>
                <Button
                  sub={[
                    one.published === null
                      ? words.never
                      : one.changed
                        ? words.changedSince(one.published)
                        : words.published(one.published),
                    ...(one.open ? [words.isOpen] : []),
                  ].join(' · ')}
                  onClick={() => onStation(one.station)}
                >
                  {words.openStation(one.name)}
                </Button>
              </li>
            ))}
          </ul>
        </Panel>
      )}
      <Panel title={words.begin} label={words.begin}>
        <form
          className={styles.form}
          onSubmit={(event) => {
            event.preventDefault()
            void begin()
          }}
        >
          <Field
            label={words.stationName}
            maxLength={60}
            value={name}
            onChange={({ target }) => setName(target.value)}
          />
          <fieldset className={styles.ways}>
            <legend>{words.beginFrom}</legend>
            {ways.map((way) => (
              <Button
                key={way.from}
                aria-pressed={from === way.from}
                sub={way.why}
                onClick={() => setFrom(way.from)}
              >
                {way.name}
              </Button>
            ))}
          </fieldset>
          {hasFailed && <Note kind="watch">{words.lost}</Note>}
          <div className={styles.acts}>
            <Button
              kind="main"
              type="submit"
              disabled={isBusy}
              lacks={name.trim() === '' ? words.lacksName : null}
            >
              {words.beginIt}
            </Button>
          </div>
        </form>
      </Panel>
    </main>
  )
}
