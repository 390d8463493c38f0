import { useRef } from 'react'
import styles from '#components/counter/bar.module.css'
import shared from '#components/counter/counter.module.css'
import { NameDialog } from '#components/counter/name-dialog.tsx'
import type { OrderingDesk } from '#components/counter/use-ordering.ts'
import { nameIn } from '#lib/menu/name-in.ts'
import type { RunningState } from '#lib/service/state.ts'
import { buildName, findBuild, LETTERS } from '#lib/service/tickets.ts'
import { keptNeeds } from '#lib/views/changing.ts'
import { settleAll, toSayAgain } from '#lib/views/ordering.ts'
import { counter } from '#lib/words/counter-en.ts'

/** What belongs to the whole order: needs, its builds, name, paid. */
export function OrderBar({
  state,
  desk: { ordering, tap },
}: {
  readonly state: RunningState
  readonly desk: OrderingDesk
}) {
  const dialog = useRef<HTMLDialogElement>(null)
  const { drafts, current, changing, name, paid, step } = ordering
  const draft = drafts[current]
  const all = settleAll(ordering, state)
  const again = toSayAgain(ordering, all)
  const known = nameIn(state.station)
  const settled = all[current]?.settled
  const changed = changing && buildName(changing.ticket, changing.letter)
  const changedBuild = changing && findBuild(state, changing.ticket, changing.letter)
  const isMaking = changedBuild?.state === 'making'
  const leave =
    changed && changedBuild?.hold
      ? changedBuild.state === 'handed-over'
        ? counter.leaveToFind(changed)
        : counter.leaveStopped(changed)
      : counter.leaveUnchanged
  return (
    <div className={styles.bar}>
      {step === 'choose' && draft && (
        <button
          type="button"
          className={styles.needs}
          data-needs={draft.needs.length > 0 || undefined}
          data-many={draft.needs.length > 1 || undefined}
          disabled={ordering.sending !== null}
          onClick={() => tap({ act: 'ask-again' })}
        >
          <strong>{counter.needsOf(draft.asked === 'none', counter.needsTold(draft.needs))}</strong>
          <small>{counter.changeNeeds}</small>
        </button>
      )}
      {changed && (
        <p className={styles.changing}>
          <strong>{counter.changing(changed)}</strong>
          {isMaking && <span>{counter.changingMaking(changed)}</span>}
          {step === 'ask' && keptNeeds(ordering, state).length > 0 && (
            <span>{counter.staysWhy}</span>
          )}
        </p>
      )}
      {drafts.length > 1 && (
        <fieldset className={styles.tabs} aria-label={counter.builds}>
          {drafts.map((one, index) => (
            <button
              // biome-ignore lint/suspicious/noArrayIndexKey: a build is its place on the ticket
              key={index}
              type="button"
              className={styles.tab}
              aria-pressed={index === current}
              aria-label={counter.build(LETTERS.charAt(index), one.item && known(one.item))}
              onClick={() => tap({ act: 'go-to', index })}
            >
              <strong>{LETTERS.charAt(index)}</strong>
              {again === index && <small>{counter.tabSayAgain}</small>}
            </button>
          ))}
        </fieldset>
      )}
      {!changing && (
        <>
          {step === 'choose' && (
            <>
              {draft && draft.needs.length > 0 && settled && !settled.blocked && (
                <button
                  type="button"
                  className={shared.button}
                  onClick={() => tap({ act: 'turn', index: current })}
                >
                  {counter.show}
                </button>
              )}
              <button
                type="button"
                className={shared.button}
                disabled={!settled || settled.blocked !== null || drafts.length >= LETTERS.length}
                aria-label={counter.another}
                onClick={() => tap({ act: 'another' })}
              >
                {drafts.length > 1 ? counter.anotherShort : counter.another}
              </button>
              <button
                type="button"
                className={shared.button}
                onClick={() => dialog.current?.showModal()}
              >
                {name === '' ? counter.addName : counter.nameIs(name)}
              </button>
              <button
                type="button"
                className={`${shared.button} ${styles.pay}`}
                data-paid={paid || undefined}
                aria-label={counter.payToggle(paid)}
                onClick={() => tap({ act: 'paid' })}
              >
                {paid ? counter.paid : counter.unpaid}
              </button>
            </>
          )}
          {step === 'ask' && drafts.length > 1 && (
            <p className={styles.changing}>{counter.askAgainHint(LETTERS.charAt(current))}</p>
          )}
          {drafts.length > 1 && (
            <button type="button" className={shared.button} onClick={() => tap({ act: 'drop' })}>
              {counter.drop(LETTERS.charAt(current))}
            </button>
          )}
        </>
      )}
      {drafts.length === 1 && (
        <button type="button" className={shared.button} onClick={() => tap({ act: 'start-over' })}>
          {changing ? leave : counter.startOver}
        </button>
      )}
      <NameDialog ref={dialog} name={name} onName={(given) => tap({ act: 'name', name: given })} />
    </div>
  )
}
