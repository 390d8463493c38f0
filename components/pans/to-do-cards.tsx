import { useState } from 'react'
import type { Acting } from '#components/live/acting.ts'
import styles from '#components/pans/cards.module.css'
import { useSettled } from '#components/ui/settled.ts'
import { nameIn } from '#lib/menu/name-in.ts'
import type { RunningState } from '#lib/service/state.ts'
import { effectOfStopping, type ToDo, toDos } from '#lib/views/pans-to-do.ts'
import { firstWords as safety } from '#lib/words/first-of-all-en.ts'
import { pansWords as words } from '#lib/words/pans-en.ts'

const MOST_THEN = 4

interface ToDoCardsProps {
  readonly state: RunningState
  readonly acting: Acting
  readonly onPan: (pan: string) => void
  readonly onLabels: (ingredient: string | null) => void
  readonly onInCharge: () => void
}

const keyOf = (toDo: ToDo): string => {
  if ('pan' in toDo) return `${toDo.kind} ${toDo.pan}`
  if ('builds' in toDo) return `${toDo.kind} ${toDo.reason} ${toDo.builds.join(' ')}`
  return 'ingredient' in toDo ? `${toDo.kind} ${toDo.ingredient}` : toDo.kind
}

/** One thing to do next, with its reason and its button; then what comes after it. */
export function ToDoCards({ state, acting, onPan, onLabels, onInCharge }: ToDoCardsProps) {
  const [next, ...then] = toDos(state)
  const [loading, setLoading] = useState(false)
  const settled = useSettled(next ? keyOf(next) : '')
  const name = nameIn(state.station)

  const refillOf = (pan: string) =>
    state.pans[pan]?.amount === 0 ? words.loadPan : words.changePan

  const said = (toDo: ToDo): { title: string; why: readonly string[]; button: string } => {
    switch (toDo.kind) {
      case 'find':
        return {
          title: safety.findTitle(toDo.builds),
          why: [safety.findWhy(toDo.reason)],
          button: safety.toHandOver,
        }
      case 'hold':
        return {
          title: safety.holdTitle(toDo.builds),
          why: [safety.holdWhy(toDo.reason)],
          button: safety.toCounter,
        }
      case 'read-label':
        return {
          title: safety.readTitle(toDo.name),
          why: [safety.readWhy],
          button: safety.readNow,
        }
      case 'product-before':
        return {
          title: words.beforeTitle(name(toDo.component)),
          why: [words.beforeWhy(toDo.ingredients)],
          button: refillOf(toDo.pan),
        }
      case 'confirm-clock':
        return {
          title: words.clockTitle,
          why: [words.clockWhy(toDo.byMs)],
          button: words.clockConfirm,
        }
      case 'load':
        return {
          title: words.loadTitle(toDo.loads.length),
          why: [words.loadWhy],
          button: words.loadUsual,
        }
      case 'short':
        return {
          title: words.shortTitle(name(toDo.component)),
          why: [words.shortWhy(toDo.lacking, toDo.builds)],
          button: refillOf(toDo.pan),
        }
      case 'sold-out':
        return {
          title: words.soldOutTitle(name(toDo.component)),
          why: words.effect(effectOfStopping(state, toDo.component), toDo.component, name),
          button: refillOf(toDo.pan),
        }
      case 'nearly-empty':
        return {
          title: words.nearlyTitle(name(toDo.component)),
          why: [words.nearlyWhy(toDo.left)],
          button: refillOf(toDo.pan),
        }
    }
  }

  const shortly = (toDo: ToDo): string => {
    switch (toDo.kind) {
      case 'find':
        return safety.find(toDo.builds, toDo.reason)
      case 'hold':
        return safety.hold(toDo.builds, toDo.reason)
      case 'read-label':
        return safety.read(toDo.name)
      case 'product-before':
        return words.todo.before(name(toDo.component))
      case 'confirm-clock':
        return words.todo.clock
      case 'load':
        return words.todo.load(toDo.loads.length)
      case 'short':
        return words.todo.short(name(toDo.component), toDo.builds)
      case 'sold-out':
        return words.todo.soldOut(name(toDo.component))
      case 'nearly-empty':
        return words.todo.nearly(name(toDo.component), toDo.left)
    }
  }

  const go = async (toDo: ToDo) => {
    if (!settled() || loading) return
    if ('pan' in toDo) onPan(toDo.pan)
    else if (toDo.kind === 'find' || toDo.kind === 'hold')
      location.assign(toDo.kind === 'find' ? '/hand-over' : '/counter')
    else if (toDo.kind === 'read-label') onLabels(toDo.ingredient)
    else if (toDo.kind === 'confirm-clock')
      await acting.act({ type: 'confirmClock' }, words.done.clock)
    else {
      setLoading(true)
      const done = words.done.loadedAll(toDo.loads.length)
      await Promise.all(toDo.loads.map((load) => acting.act({ type: 'load', ...load }, done)))
      setLoading(false)
    }
  }

  const told = next ? said(next) : null
  return (
    <>
      <section
        className={styles.card}
        data-kind={next ? 'next' : 'calm'}
        data-urgent={next?.kind === 'find' || next?.kind === 'hold'}
      >
        <h2 className={styles.label}>{words.doNext}</h2>
        <p className={styles.title}>{told?.title ?? words.nothingToDo}</p>
        <div className={styles.why}>
          {(told?.why ?? [words.nothingToDoWhy]).map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
        </div>
        {next && told && (
          <button
            type="button"
            className={styles.main}
            disabled={loading}
            onClick={() => void go(next)}
          >
            {told.button}
          </button>
        )}
      </section>
      <section className={styles.card} data-kind="then">
        <h2 className={styles.label}>{words.afterThat}</h2>
        {then.length === 0 ? (
          <p className={styles.why}>{words.nothingElse}</p>
        ) : (
          <ul className={styles.then}>
            {then.slice(0, MOST_THEN).map((toDo) => (
              <li key={keyOf(toDo)} data-kind={toDo.kind}>
                {shortly(toDo)}
              </li>
            ))}
          </ul>
        )}
        {then.length > MOST_THEN && (
          <p className={styles.foot}>{words.more(then.length - MOST_THEN)}</p>
        )}
        <nav className={styles.ways} aria-label={safety.ways}>
          <button type="button" onClick={onInCharge}>
            {safety.inCharge}
          </button>
          <button type="button" onClick={() => onLabels(null)}>
            {safety.labelChanged}
          </button>
          <a href="/sheet">{safety.toSheet}</a>
        </nav>
      </section>
    </>
  )
}
