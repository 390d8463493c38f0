'use client'

import { useEffect, useRef, useState } from 'react'
import page from '#components/access/page.module.css'
import { type Listed, stationsNow } from '#components/menu/carry/ask-carry.ts'
import styles from '#components/menu/carry/carry.module.css'
import { type Seems, seems } from '#components/menu/carry/chosen-file.ts'
import { StationLook } from '#components/menu/carry/station-look.tsx'
import { TableLook } from '#components/menu/carry/table-look.tsx'
import { CarryWordsProvider, useCarryWords } from '#components/menu/carry/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { Note } from '#components/ui/note.tsx'
import { Panel } from '#components/ui/panel.tsx'

/** Which station, where the address names none. */
function Which({ stations }: { readonly stations: readonly Listed[] }) {
  const words = useCarryWords()
  return (
    <Panel title={words.out} label={words.out}>
      <ul className={styles.out}>
        {stations.map(({ station, name }) => (
          <li key={station}>
            <a href={`/menu/carry?station=${encodeURIComponent(station)}`}>
              <b>{name}</b>
            </a>
          </li>
        ))}
      </ul>
    </Panel>
  )
}

function Out({ station }: { readonly station: string }) {
  const words = useCarryWords()
  const at = encodeURIComponent(station)
  const ways = [
    [`/menu/export?station=${at}`, words.file, words.fileHint],
    [`/menu/csv?station=${at}&what=ingredients`, words.ingredients, words.tableHint],
    [`/menu/csv?station=${at}&what=recipes`, words.recipes, words.tableHint],
  ] as const
  return (
    <Panel title={words.out} label={words.out}>
      <ul className={styles.out}>
        {ways.map(([href, name, hint]) => (
          <li key={href}>
            <a href={href} download="">
              <b>{name}</b>
              <span>{hint}</span>
            </a>
          </li>
        ))}
      </ul>
    </Panel>
  )
}

interface Chosen {
  readonly file: File
  readonly seems: Seems
  /** So that the same file chosen again is looked at anew. */
  readonly key: number
}

function In({ own }: { readonly own: Listed | null }) {
  const words = useCarryWords()
  const input = useRef<HTMLInputElement>(null)
  const [chosen, setChosen] = useState<Chosen | null>(null)
  const [done, setDone] = useState<{ station: string; said: string } | null>(null)
  const leave = () => setChosen(null)
  const onTaken = (station: string, said: string) => {
    setChosen(null)
    setDone({ station, said })
  }
  return (
    <Panel
      title={words.into}
      label={words.into}
      {...(chosen ? { facts: [chosen.file.name], back: words.leave, onBack: leave } : {})}
    >
      <input
        ref={input}
        type="file"
        accept=".json,.csv,.tsv,.txt"
        hidden
        aria-label={words.choose}
        onChange={({ target }) => {
          const [file] = target.files ?? []
          target.value = ''
          if (file === undefined) return
          setDone(null)
          void seems(file).then((one) => setChosen({ file, seems: one, key: Date.now() }))
        }}
      />
      {chosen === null ? (
        <>
          {done !== null && (
            <Note kind="done" role="status">
              {done.said}{' '}
              <a href={`/menu?station=${encodeURIComponent(done.station)}`}>{words.toMenu}</a>
            </Note>
          )}
          <Button size="large" sub={words.chooseHint} onClick={() => input.current?.click()}>
            {done === null ? words.choose : words.another}
          </Button>
        </>
      ) : chosen.seems === 'station' ? (
        <StationLook key={chosen.key} file={chosen.file} own={own} onTaken={onTaken} />
      ) : own === null ? (
        <Note kind="no">{words.noStation}</Note>
      ) : (
        <TableLook
          key={chosen.key}
          file={chosen.file}
          station={own.station}
          first={chosen.seems}
          onTaken={onTaken}
        />
      )}
    </Panel>
  )
}

function Screen() {
  const words = useCarryWords()
  const [own, setOwn] = useState<Listed | null>(null)
  const [stations, setStations] = useState<readonly Listed[]>([])
  useEffect(() => {
    const station = new URLSearchParams(location.search).get('station') ?? ''
    void stationsNow().then((all) => {
      setStations(all)
      setOwn(all.find((one) => one.station === station) ?? null)
    })
  }, [])
  return (
    <main className={page.page}>
      <header className={page.top}>
        <h1>{words.title}</h1>
        <p>{own?.name ?? words.lead}</p>
        <a href={own === null ? '/menu' : `/menu?station=${encodeURIComponent(own.station)}`}>
          {words.back}
        </a>
      </header>
      <div className={styles.both}>
        {own !== null && <Out station={own.station} />}
        {own === null && stations.length > 0 && <Which stations={stations} />}
        <In own={own} />
      </div>
    </main>
  )
}

/** Out of this laptop as files, and into it from them, each looked at first. */
export function CarryScreen() {
  return (
    <CarryWordsProvider>
      <Screen />
    </CarryWordsProvider>
  )
}
