import styles from '#components/counter/tickets.module.css'
import { type CounterWords, useCounterWords } from '#components/counter/words.tsx'
import { Line } from '#components/line/line.tsx'
import { useCrew } from '#components/live/crew.tsx'
import {
  goesOnAs,
  type PanMark,
  panMarks,
  type TicketBuild,
} from '#lib/rooms/orders/views/tickets-to-change.ts'
import type { ShortWays } from '#lib/rooms/pans/facts/short-ways.ts'
import { isKeptApart } from '#lib/service/events/build-choice.ts'
import { markOf } from '#lib/service/mark.ts'
import type { RunningState } from '#lib/service/state.ts'
import { sayBuild } from '#lib/service/tickets.ts'
import { nameIn } from '#lib/station/name-in.ts'

interface TicketRowProps {
  readonly state: RunningState
  readonly one: TicketBuild
  /** "21A" */
  readonly name: string
  /** What the pans lack for it; null where nothing. */
  readonly short: ShortWays | null
  /** All that they lack for it. */
  readonly lacks: readonly string[]
  readonly isChosen: boolean
  readonly choose: () => void
}

/** How a build stands, in words; null where that is only its state. */
const trouble = (
  words: CounterWords,
  { build }: TicketBuild,
  short: ShortWays | null,
  lacks: readonly string[],
  nameOf: (id: string) => string,
): string | null => {
  const { onTicket } = words
  if (build.hold) return build.state === 'handed-over' ? onTicket.toFindRow : onTicket.heldRow
  if (build.stop) return onTicket.stoppedRow
  if (short === null) return null
  return short.waits
    ? onTicket.waitsFor(nameOf(short.component))
    : onTicket.shortOf(lacks.map(nameOf))
}

/** One build of a ticket over the line: its number, how it stands, and its mark in the pans' columns. */
export function TicketRow({ state, one, name, short, lacks, isChosen, choose }: TicketRowProps) {
  const words = useCounterWords()
  const { ticket, build, nameKey } = one
  const called = useCrew((view) => (nameKey === null ? undefined : view.names[nameKey]))
  const nameOf = nameIn(state.station)
  const choice = goesOnAs(build)
  const isApart = isKeptApart(choice)
  const wrong = trouble(words, one, short, lacks, nameOf)
  const marks = panMarks(state, build)
  const stands = build.state === 'making' ? words.onTicket.makingRow : words.stateName[build.state]
  const more = [
    ...(wrong === null ? [stands] : []),
    ...(called === undefined ? [] : [called]),
    ...(ticket.paid ? [words.onTicket.paid] : []),
  ]
  const inWords = words.markLines(markOf(state, ticket.number, build.letter, choice)).join(' · ')
  return (
    <li
      className={styles.row}
      data-build={name}
      data-chosen={isChosen || undefined}
      data-wrong={wrong === null ? undefined : ''}
      data-apart={isApart || undefined}
    >
      <button type="button" className={styles.press} aria-pressed={isChosen} onClick={choose}>
        <strong className={styles.number}>{sayBuild(name)}</strong>
        <span className={styles.what}>
          <strong>{nameOf(choice.item)}</strong>
          <span data-state={build.state}>
            {wrong !== null && <em>{wrong}</em>}
            {wrong !== null && more.length > 0 && ', '}
            {more.join(', ')}
            {isApart && (
              <>
                , <b>{words.onTicket.keptApart}</b>
              </>
            )}
          </span>
          <span className="visually-hidden">{inWords}</span>
          <span className={styles.inWords} aria-hidden="true">
            {inWords}
          </span>
        </span>
      </button>
      <div className={styles.marks} aria-hidden="true">
        <Line
          station={state.station}
          label={name}
          renderPan={({ component }) => (
            <Mark mark={marks[component] ?? { kind: 'none' }} words={words} />
          )}
        />
      </div>
    </li>
  )
}

/** What a mark says of a pan; empty for the usual. */
export const wordOf = (words: CounterWords, mark: PanMark): string => {
  const { pan } = words.onTicket
  switch (mark.kind) {
    case 'none':
    case 'usual':
      return ''
    case 'no':
    case 'gone':
      return pan[mark.kind]
    case 'need':
      return pan.need(mark.code)
    case 'with':
    case 'side':
      return pan.taken(mark.kind, mark.portions)
  }
}

function Mark({ mark, words }: { readonly mark: PanMark; readonly words: CounterWords }) {
  const word = wordOf(words, mark)
  const isNot = mark.kind === 'no' || mark.kind === 'gone' || mark.kind === 'need'
  return (
    <span
      className={styles.mark}
      data-kind={mark.kind === 'need' && mark.isApart ? 'apart' : mark.kind}
    >
      {mark.kind !== 'none' && (
        <svg viewBox="0 0 24 24" aria-hidden="true">
          {mark.kind === 'side' ? (
            <circle cx="12" cy="12" r="9" />
          ) : (
            <rect x="3" y="3" width="18" height="18" rx="5" />
          )}
          {mark.kind === 'with' && <path d="M12 7.5v9M7.5 12h9" />}
          {mark.kind === 'side' && <circle cx="12" cy="12" r="2.5" />}
          {isNot && <path d="M5.5 5.5l13 13" />}
        </svg>
      )}
      {word !== '' && <small>{word}</small>}
    </span>
  )
}
