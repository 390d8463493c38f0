import { useState } from 'react'
import { foodEnglish } from '#components/job/english-food-words.ts'
import { ProbeScale } from '#components/job/probe-scale.tsx'
import { FoodWordsContext } from '#components/job/use-food-words.ts'
import styles from '#components/tasting/reading.module.css'
import type { TastingAct } from '#components/tasting/use-tastings.ts'
import { useTastingWords } from '#components/tasting/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { Choice } from '#components/ui/choice.tsx'
import { Field } from '#components/ui/field.tsx'
import { NumberPad } from '#components/ui/number-pad.tsx'
import { probeScaleOf } from '#lib/rooms/food/views/probe-scale.ts'
import {
  cookLimit,
  heatReadingOf,
  type JudgedEntry,
  judgeEntry,
  probePlaces,
  type ReadingEntry,
} from '#lib/rooms/food/views/reading-entry.ts'
import { componentOf } from '#lib/station/find.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

/** Typed once for all foods of it. */
export interface Hands {
  readonly probe: string
  readonly initials: string
}

interface ReadFoodProps {
  readonly station: StationDocument
  readonly tasting: string
  readonly component: string
  readonly acting: TastingAct
  readonly hands: Hands
  readonly onHands: (hands: Hands) => void
  readonly onBack: () => void
}

/** Asked before it is sent: "Did you mean °F?" */
function Question({
  judged: { question, temperature },
  scale,
  change,
}: {
  readonly judged: JudgedEntry
  readonly scale: ReadingEntry['scale']
  readonly change: (part: Partial<ReadingEntry>) => void
}) {
  const words = useTastingWords()
  if (!question || !temperature) return null
  return (
    <div className={styles.question} role="alert">
      <p>{words.safety.question(question, temperature)}</p>
      {question.code === 'did-you-mean' && (
        <>
          <Button onClick={() => change({ scale: question.scale })}>
            {words.readings.yesMeant(question.scale)}
          </Button>
          <Button
            onClick={() => (question.must ? change({ text: '' }) : change({ confirmed: true }))}
          >
            {question.must ? words.readings.readAgain : words.readings.noMeant(scale)}
          </Button>
        </>
      )}
    </div>
  )
}

/** A cooked food is read on large keys, with probe and initials, before anybody tastes it. */
export function ReadFood(props: ReadFoodProps) {
  const { station, tasting, component, acting, hands, onHands, onBack } = props
  const words = useTastingWords()
  const food = componentOf(station, component)
  const { scale } = station.safety
  const limit = cookLimit(station, food)
  const heat = limit?.kind === 'heat' ? limit.limit : null
  const places = probePlaces(food, 'cooking')
  const [typed, setTyped] = useState({
    text: '',
    scale,
    where: null,
    held: '',
    confirmed: false,
  } as Omit<ReadingEntry, keyof Hands>)
  const [stood, setStood] = useState('')
  const entry: ReadingEntry = { ...typed, ...hands, stood }
  const judged = judgeEntry(entry, 'cooking', scale, limit)
  const change = (part: Partial<ReadingEntry>) => {
    acting.hush()
    const isAnew = 'text' in part || 'scale' in part
    setTyped((before) => ({ ...before, ...(isAnew ? { confirmed: false } : {}), ...part }))
  }
  const read = judged.temperature && words.safety.degrees(judged.temperature)
  const isLow = judged.verdict === 'not-met'
  const lacks = judged.lacks ? words.readings.lack[judged.lacks] : null
  const record = async () => {
    const reading = heatReadingOf(entry)
    if (!reading) return
    const done = await acting.act({
      type: 'readTasting',
      ...{ tasting, component, ...reading },
      initials: hands.initials.trim(),
    })
    if (done !== null) onBack()
  }
  return (
    <section className={styles.reading} aria-label={words.read(food.name)}>
      <div className={styles.probed}>
        <header>
          <h2>{words.read(food.name)}</h2>
          <Button kind="quiet" onClick={onBack}>
            {words.back}
          </Button>
        </header>
        {limit && <p>{words.atLeast(words.sayLimit(limit, scale))}</p>}
        <Choice
          legend={words.readings.where}
          ways={places.map((id) => ({ id, label: words.readings.whereIs[id] }))}
          chosen={entry.where}
          onChoose={(where) => change({ where })}
        />
        <div className={styles.fields}>
          {heat?.combinations.some(({ seconds }) => seconds > 0) && (
            <Field
              label={words.readings.held}
              inputMode="numeric"
              maxLength={5}
              value={entry.held}
              onChange={({ target }) => change({ held: target.value.replace(/\D/g, '') })}
            />
          )}
          {(heat?.standSeconds ?? 0) > 0 && (
            <Field
              label={words.stood}
              inputMode="numeric"
              maxLength={5}
              value={stood}
              onChange={({ target }) => setStood(target.value.replace(/\D/g, ''))}
            />
          )}
          <Field
            label={words.readings.probe}
            maxLength={40}
            value={hands.probe}
            onChange={({ target }) => onHands({ ...hands, probe: target.value })}
          />
          <Field
            label={words.initials}
            maxLength={6}
            value={hands.initials}
            onChange={({ target }) => onHands({ ...hands, initials: target.value.toUpperCase() })}
          />
        </div>
        <Question {...{ judged, change, scale: typed.scale }} />
      </div>
      {limit && (
        <FoodWordsContext value={foodEnglish}>
          <div className={styles.scale}>
            <ProbeScale
              drawn={probeScaleOf(limit, typed.scale)}
              read={judged.question ? null : (judged.temperature?.tenths ?? null)}
              isMet={judged.verdict === 'met'}
            />
          </div>
        </FoodWordsContext>
      )}
      <div className={styles.figures}>
        <output data-is={judged.verdict ?? 'none'}>
          <b>
            {typed.text === '' ? '–' : typed.text} {words.readings.scale(typed.scale)}
          </b>{' '}
          <span>{judged.verdict && words.readings.verdict[judged.verdict]}</span>
        </output>
        <NumberPad
          words={words.readings}
          text={typed.text}
          decimals={1}
          side={null}
          onChange={(text) => change({ text })}
        />
        <Button
          kind={isLow ? 'no' : 'main'}
          size="large"
          lacks={lacks}
          disabled={acting.busy || !judged.isReady}
          onClick={() => void record()}
        >
          {isLow && read !== null ? words.recordLow(read) : words.record(read)}
        </Button>
      </div>
    </section>
  )
}
