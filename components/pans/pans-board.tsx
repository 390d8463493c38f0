import { lazy, Suspense, useEffect, useRef, useState } from 'react'
import type { Chosen } from '#components/job/chosen.ts'
import { useActing } from '#components/live/acting.ts'
import { useForecast } from '#components/live/forecast.ts'
import { useServerTime } from '#components/live/server-time.ts'
import { BatchStrip } from '#components/pans/batch-strip.tsx'
import { LeadLine } from '#components/pans/lead-line.tsx'
import styles from '#components/pans/pans.module.css'
import { PansHeader } from '#components/pans/pans-header.tsx'
import { TaskCards } from '#components/pans/task-cards.tsx'
import { PansWordsProvider, usePansWords } from '#components/pans/words.tsx'
import { foodTimes } from '#lib/rooms/food/facts/food-times.ts'
import { batchPictures } from '#lib/rooms/food/views/batch-strip.ts'
import { panPictures } from '#lib/rooms/pans/facts/pans.ts'
import type { RunningState } from '#lib/service/state.ts'
import { findPan } from '#lib/station/find.ts'

const loadInCharge = () => import('#components/pans/in-charge-panel.tsx')
const loadLabels = () => import('#components/care/label-dialog.tsx')
const loadPanels = () => import('#components/pans/board-panels.tsx')
const loadDates = () => import('#components/food/food-dates.tsx')

/** Rarely wanted, and heavier than the line: fetched once the line stands. */
const InChargePanel = lazy(async () => ({ default: (await loadInCharge()).InChargePanel }))
const PanPanel = lazy(async () => ({ default: (await loadPanels()).PanPanel }))
const ItemPanel = lazy(async () => ({ default: (await loadPanels()).ItemPanel }))
const ClosePanel = lazy(async () => ({ default: (await loadPanels()).ClosePanel }))
const LabelDialog = lazy(async () => ({ default: (await loadLabels()).LabelDialog }))
const FoodDialog = lazy(async () => ({ default: (await loadPanels()).FoodDialog }))

/** Before anyone needs them, so that they open without a network as well. */
const PRELOAD_AFTER_MS = 500

const preload = () => {
  for (const load of [loadPanels, loadInCharge, loadLabels, loadDates])
    load().catch(() => undefined)
}

/** How often what depends on the time alone is worked out anew. */
const STEP_MS = 5_000

function Board({ state }: { readonly state: RunningState }) {
  const words = usePansWords()
  const acting = useActing(words.loadRefusals)
  const forecast = useForecast()
  const now = Math.max(state.at, Math.floor(useServerTime() / STEP_MS) * STEP_MS)
  const [chosen, setChosen] = useState<Chosen | null>(null)
  const cameFrom = useRef<HTMLElement | null>(null)
  const pictures = panPictures(state)

  const choose = (next: Chosen) => {
    if (chosen === null && document.activeElement instanceof HTMLElement)
      cameFrom.current = document.activeElement
    acting.hush()
    setChosen(next)
  }
  const back = () => {
    setChosen(null)
    requestAnimationFrame(() => {
      if (cameFrom.current?.isConnected) cameFrom.current.focus()
    })
  }

  useEffect(() => {
    const timer = setTimeout(preload, PRELOAD_AFTER_MS)
    return () => clearTimeout(timer)
  }, [])

  const pan = chosen?.kind === 'pan' ? findPan(state.station, chosen.id) : undefined
  const picture = pan ? pictures[pan.id] : undefined
  const panelProps = { state, acting, onBack: back }

  return (
    <main className={styles.board} data-chosen={chosen?.kind ?? 'none'}>
      <PansHeader
        state={state}
        said={acting.said}
        busy={acting.busy}
        onClose={() => choose({ kind: 'close' })}
      />
      <div className={styles.line}>
        <LeadLine
          state={state}
          pictures={pictures}
          forecast={forecast}
          now={now}
          chosen={chosen?.kind === 'pan' ? chosen.id : null}
          onPan={(id) => choose({ kind: 'pan', id })}
        />
      </div>
      <Suspense fallback={<div className={styles.cards} />}>
        {pan && picture ? (
          <PanPanel
            key={pan.id}
            {...panelProps}
            pan={pan}
            picture={picture}
            times={foodTimes(state, 'pan', pan.id, now)}
            forecast={forecast}
            choose={choose}
          />
        ) : chosen?.kind === 'item' ? (
          <ItemPanel key={chosen.id} {...panelProps} item={chosen.id} />
        ) : chosen?.kind === 'close' ? (
          <ClosePanel {...panelProps} />
        ) : chosen?.kind === 'in-charge' ? (
          <InChargePanel {...panelProps} />
        ) : (
          <>
            <BatchStrip state={state} batches={batchPictures(state, now)} choose={choose} />
            <TaskCards
              state={state}
              forecast={forecast}
              now={now}
              acting={acting}
              choose={choose}
            />
          </>
        )}
      </Suspense>
      {chosen?.kind === 'labels' && (
        <Suspense fallback={null}>
          <LabelDialog {...panelProps} ingredient={chosen.ingredient} />
        </Suspense>
      )}
      {chosen?.kind === 'food' && (
        <Suspense fallback={null}>
          <FoodDialog {...panelProps} food={chosen.food} now={now} choose={choose} />
        </Suspense>
      )}
    </main>
  )
}

export function PansBoard(props: { readonly state: RunningState }) {
  return (
    <PansWordsProvider>
      <Board {...props} />
    </PansWordsProvider>
  )
}
