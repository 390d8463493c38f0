'use client'

import { useEffect, useState } from 'react'
import page from '#components/access/page.module.css'
import { PlanForm } from '#components/tasting/plan-form.tsx'
import styles from '#components/tasting/tasting.module.css'
import { TastingBoard } from '#components/tasting/tasting-board.tsx'
import { type TastingAct, useTastings } from '#components/tasting/use-tastings.ts'
import { TastingWordsProvider, useTastingWords } from '#components/tasting/words.tsx'
import { Note } from '#components/ui/note.tsx'
import { findComponent } from '#lib/station/find.ts'
import type { TastingsNow, TastingTold } from '#lib/tasting/http.ts'
import { isToCome } from '#lib/tasting/tasting.ts'

/** The address with one tasting, or none, chosen; the rest of it stays. */
const wayTo = (tasting: string | null): string => {
  const search = new URLSearchParams(location.search)
  if (tasting === null) search.delete('tasting')
  else search.set('tasting', tasting)
  return `/tasting?${search}`
}

function All({ seen, chosen }: { readonly seen: TastingsNow; readonly chosen: string | null }) {
  const words = useTastingWords()
  const { station, tastings } = seen
  const others = tastings.filter(({ tasting }) => tasting.id !== chosen)
  if (others.length === 0 && chosen === null) return null
  const rowOf = ({ tasting }: TastingTold) =>
    words.row(
      tasting.on,
      tasting.from,
      tasting.components.map((one) => findComponent(station, one)?.name ?? one),
    )
  return (
    <nav aria-label={words.all} className={page.links}>
      {chosen !== null && <a href={wayTo(null)}>{words.another}</a>}
      {others.map((one) => (
        <a key={one.tasting.id} href={wayTo(one.tasting.id)}>
          {rowOf(one)}
        </a>
      ))}
    </nav>
  )
}

function Drop({ acting, tasting }: { readonly acting: TastingAct; readonly tasting: string }) {
  const words = useTastingWords()
  const [isSure, setSure] = useState(false)
  return (
    <button
      type="button"
      className={styles.drop}
      data-sure={isSure || undefined}
      onClick={() => (isSure ? void acting.act({ type: 'dropTasting', tasting }) : setSure(true))}
    >
      {isSure ? words.dropSure : words.drop}
    </button>
  )
}

function Tasting() {
  const words = useTastingWords()
  const { seen, refused, acting } = useTastings()
  const [chosen, setChosen] = useState<string | null>(null)
  const [first, setFirst] = useState<readonly string[] | null>(null)
  useEffect(() => {
    const search = new URLSearchParams(location.search)
    setChosen(search.get('tasting'))
    setFirst((search.get('taste') ?? '').split(',').filter((one) => one !== ''))
  }, [])
  const told = seen?.tastings.find(({ tasting }) => tasting.id === chosen) ?? null
  const onPlanned = (tasting: string) => {
    history.replaceState(null, '', wayTo(tasting))
    setChosen(tasting)
  }
  const isShut = refused === 'not-yours' || refused === 'not-joined'
  const { tasting } = told ?? {}
  return (
    <main className={`${page.page} ${styles.page}`}>
      <header className={page.top}>
        <h1>
          {tasting
            ? words.titleOf(tasting.on, tasting.from, tasting.to, tasting.period)
            : words.title}
        </h1>
        <p>
          {tasting
            ? words.sub(tasting.portions, tasting.tasters.length, tasting.from, tasting.to)
            : words.what}
        </p>
        <a href={`/plan${seen ? `?station=${seen.station.id}` : ''}`}>{words.toPlan}</a>
        <a href="/">{words.toFirstPage}</a>
      </header>
      {isShut && <Note kind="no">{words.notLead}</Note>}
      {!isShut && refused !== null && (
        <Note kind="watch" role="status">
          {(refused as string) === 'no-such-station' ? words.noStation : words.lost}
        </Note>
      )}
      {seen === null && refused === null && <p>{words.looking}</p>}
      {seen && first && (
        <>
          {told ? (
            <TastingBoard key={told.tasting.id} station={seen.station} {...{ told, acting }} />
          ) : (
            <PlanForm
              station={seen.station}
              now={seen.now}
              first={first.filter((one) => findComponent(seen.station, one))}
              {...{ acting, onPlanned }}
            />
          )}
          <footer className={styles.foot}>
            {tasting && <p>{words.caution}</p>}
            {tasting && isToCome(tasting) && (
              <Drop key={tasting.id} {...{ acting, tasting: tasting.id }} />
            )}
            <All {...{ seen, chosen: tasting?.id ?? null }} />
          </footer>
        </>
      )}
    </main>
  )
}

/** A small batch to try, drawn over the line: planned, its tasters asked, made, weighed. */
export function TastingScreen() {
  return (
    <TastingWordsProvider>
      <Tasting />
    </TastingWordsProvider>
  )
}
