import { useState } from 'react'
import { Line } from '#components/line/line.tsx'
import { Cooking } from '#components/tasting/cooking.tsx'
import { type Hands, ReadFood } from '#components/tasting/read-food.tsx'
import { Results } from '#components/tasting/results.tsx'
import { TastedPan } from '#components/tasting/tasted-pan.tsx'
import styles from '#components/tasting/tasting.module.css'
import type { TastingAct } from '#components/tasting/use-tastings.ts'
import { Weighing } from '#components/tasting/weighing.tsx'
import { WhoPanel } from '#components/tasting/who-panel.tsx'
import { useTastingWords } from '#components/tasting/words.tsx'
import { Notch } from '#components/ui/notch.tsx'
import { findComponent, pansOf } from '#lib/station/find.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import type { TastingTold } from '#lib/tasting/http.ts'
import { isToCome } from '#lib/tasting/tasting.ts'
import { whoCanTaste } from '#lib/tasting/who-can-taste.ts'

interface TastingBoardProps {
  readonly station: StationDocument
  readonly told: TastingTold
  readonly acting: TastingAct
}

/** A tasting over the line: who can taste what, the cards to cook by, and what was made. */
export function TastingBoard({ station, told, acting }: TastingBoardProps) {
  const words = useTastingWords()
  const { tasting } = told
  const [reading, setReading] = useState<string | null>(null)
  const [hands, setHands] = useState<Hands>({ probe: '', initials: '' })
  // What was taken off the line since isn't drawn, nor judged.
  const there = tasting.components.filter((one) => findComponent(station, one))
  const who = whoCanTaste(station, { ...tasting, components: there }, told.told)
  const isOpen = isToCome(tasting)
  const about = pansOf(station).filter(({ component }) => there.includes(component))
  return (
    <Notch about={about.map(({ id }) => id)} className={styles.stage ?? ''}>
      <div className={styles.line}>
        <Line
          station={station}
          label={words.lineOf}
          wrap="by-well"
          renderPan={(pan, component) => (
            <TastedPan
              {...{ component }}
              pan={pan.id}
              isTasted={there.includes(component.id)}
              who={(isOpen && who.find((one) => one.component === component.id)) || null}
            />
          )}
        />
      </div>
      <section className={styles.panel} data-notch-panel="">
        {reading !== null && tasting.stage === 'making' ? (
          <ReadFood
            key={reading}
            {...{ station, acting, hands, component: reading, tasting: tasting.id }}
            onHands={setHands}
            onBack={() => setReading(null)}
          />
        ) : (
          isOpen && <WhoPanel {...{ station, told, who, acting }} />
        )}
        {reading === null && tasting.stage === 'making' && (
          <Cooking {...{ station, tasting, who, acting }} onRead={setReading} />
        )}
        {tasting.stage === 'ready' && (
          <Weighing
            {...{ station, tasting, who, acting, initials: hands.initials }}
            onInitials={(initials) => setHands({ ...hands, initials })}
          />
        )}
        {!isOpen && <Results {...{ station, tasting }} />}
        <p role="status" className={styles.said}>
          {acting.said ?? ''}
        </p>
      </section>
    </Notch>
  )
}
