import { lazy, Suspense, useEffect, useRef, useState } from 'react'
import { Line } from '#components/line/line.tsx'
import { useActing } from '#components/live/acting.ts'
import { ClosePanel } from '#components/pans/close-panel.tsx'
import { ItemPanel } from '#components/pans/item-panel.tsx'
import { ItemsCard } from '#components/pans/items-card.tsx'
import { PanButton } from '#components/pans/pan-button.tsx'
import { PanPanel } from '#components/pans/pan-panel.tsx'
import styles from '#components/pans/pans.module.css'
import { PansHeader } from '#components/pans/pans-header.tsx'
import { ToDoCards } from '#components/pans/to-do-cards.tsx'
import { findPan } from '#lib/menu/find.ts'
import { nameIn } from '#lib/menu/name-in.ts'
import type { RunningState } from '#lib/service/state.ts'
import { panPictures } from '#lib/views/pans.ts'
import { pansWords as words } from '#lib/words/pans-en.ts'

type Chosen =
  | { readonly kind: 'pan'; readonly id: string }
  | { readonly kind: 'item'; readonly id: string }
  | { readonly kind: 'close' }
  | { readonly kind: 'in-charge' }
  /** `ingredient`: its label is to be read; null: whichever is chosen there. */
  | { readonly kind: 'labels'; readonly ingredient: string | null }

const loadInCharge = () => import('#components/pans/in-charge-panel.tsx')
const loadLabels = () => import('#components/pans/label-dialog.tsx')

/** Rarely wanted, and heavier than the line: fetched once the line stands. */
const InChargePanel = lazy(async () => ({ default: (await loadInCharge()).InChargePanel }))
const LabelDialog = lazy(async () => ({ default: (await loadLabels()).LabelDialog }))

/** Before anyone needs them, so that they open without a network as well. */
const PRELOAD_AFTER_MS = 1_500

const preload = () => {
  for (const load of [loadInCharge, loadLabels]) load().catch(() => undefined)
}

export function PansBoard({ state }: { readonly state: RunningState }) {
  const acting = useActing()
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

  return (
    <main className={styles.board} data-chosen={chosen?.kind ?? 'none'}>
      <PansHeader
        state={state}
        said={acting.said}
        busy={acting.busy}
        onClose={() => choose({ kind: 'close' })}
      />
      <div className={styles.line}>
        <Line
          station={state.station}
          label={words.line}
          wrap="by-well"
          renderPan={({ id }, component) => {
            const one = pictures[id]
            return one ? (
              <PanButton
                picture={one}
                component={component}
                soiledBy={one.soiledBy.map(nameIn(state.station))}
                chosen={chosen?.kind === 'pan' && chosen.id === id}
                onChoose={() => choose({ kind: 'pan', id })}
              />
            ) : null
          }}
        />
      </div>
      {pan && picture ? (
        <PanPanel
          key={pan.id}
          state={state}
          pan={pan}
          picture={picture}
          acting={acting}
          onBack={back}
        />
      ) : chosen?.kind === 'item' ? (
        <ItemPanel key={chosen.id} state={state} item={chosen.id} acting={acting} onBack={back} />
      ) : chosen?.kind === 'close' ? (
        <ClosePanel state={state} acting={acting} onBack={back} />
      ) : chosen?.kind === 'in-charge' ? (
        <Suspense fallback={<div className={styles.cards} />}>
          <InChargePanel state={state} acting={acting} onBack={back} />
        </Suspense>
      ) : (
        <div className={styles.cards}>
          <ToDoCards
            state={state}
            acting={acting}
            onPan={(id) => choose({ kind: 'pan', id })}
            onLabels={(ingredient) => choose({ kind: 'labels', ingredient })}
            onInCharge={() => choose({ kind: 'in-charge' })}
          />
          <ItemsCard state={state} onItem={(id) => choose({ kind: 'item', id })} />
        </div>
      )}
      {chosen?.kind === 'labels' && (
        <Suspense fallback={null}>
          <LabelDialog state={state} acting={acting} ingredient={chosen.ingredient} onBack={back} />
        </Suspense>
      )}
    </main>
  )
}
