import styles from '#components/counter/bar.module.css'
import { NameButton } from '#components/counter/name-button.tsx'
import type { OrderingDesk } from '#components/counter/use-ordering.ts'
import { useCounterWords } from '#components/counter/words.tsx'
import { useNarrow } from '#components/device/use-device.ts'
import { Button } from '#components/ui/button.tsx'
import { keptNeeds } from '#lib/rooms/orders/views/changing.ts'
import { nextStep } from '#lib/rooms/orders/views/next-step.ts'
import { settleAll, toSayAgain } from '#lib/rooms/orders/views/ordering.ts'
import type { RunningState } from '#lib/service/state.ts'
import { buildName, findBuild, LETTERS } from '#lib/service/tickets.ts'
import { nameIn } from '#lib/station/name-in.ts'

/** What belongs to the whole order: needs, its builds, name. */
export function OrderBar({
  state,
  desk: { ordering, tap },
}: {
  readonly state: RunningState
  readonly desk: OrderingDesk
}) {
  const words = useCounterWords()
  const narrow = useNarrow()
  const { drafts, current, changing, step } = ordering
  const draft = drafts[current]
  const all = settleAll(ordering, state)
  const again = toSayAgain(ordering, all)
  const known = nameIn(state.station)
  const settled = all[current]?.settled
  const isSending = ordering.sending !== null
  const changed = changing && buildName(changing.ticket, changing.letter)
  const changedBuild = changing && findBuild(state, changing.ticket, changing.letter)
  const isMaking = changedBuild?.state === 'making'
  // A phone has room for it once: as the way on.
  const isTurnedAnyway = narrow && nextStep(ordering, state).step === 'turn'
  const leave =
    changed && changedBuild?.hold
      ? changedBuild.state === 'handed-over'
        ? words.leaveToFind(changed)
        : words.leaveStopped(changed)
      : words.leaveUnchanged
  return (
    <div className={styles.bar} inert={isSending}>
      {step === 'choose' && draft && (
        <button
          type="button"
          className={styles.needs}
          data-needs={
            draft.needs.length === 0
              ? undefined
              : draft.needs.some((one) => one.handling === 'keep-apart')
                ? 'apart'
                : 'out'
          }
          data-many={draft.needs.length > 1 || undefined}
          disabled={isSending}
          onClick={() => tap({ act: 'ask-again' })}
        >
          <strong>{words.needsOf(draft.asked === 'none', words.needsTold(draft.needs))}</strong>
          <small>{words.changeNeeds}</small>
        </button>
      )}
      {changed && (
        <p className={styles.changing}>
          <strong>{words.changing(changed)}</strong>
          {isMaking && <span>{words.changingMaking(changed)}</span>}
          {step === 'ask' && keptNeeds(ordering, state).length > 0 && <span>{words.staysWhy}</span>}
        </p>
      )}
      {drafts.length > 1 && (
        <fieldset className={styles.tabs} aria-label={words.builds}>
          {drafts.map((one, index) => (
            <button
              // biome-ignore lint/suspicious/noArrayIndexKey: a build is its place on the ticket
              key={index}
              type="button"
              className={styles.tab}
              aria-pressed={index === current}
              aria-label={words.build(LETTERS.charAt(index), one.item && known(one.item))}
              onClick={() => tap({ act: 'go-to', index })}
            >
              <strong>{LETTERS.charAt(index)}</strong>
              {again === index && <small>{words.tabSayAgain}</small>}
            </button>
          ))}
        </fieldset>
      )}
      {!changing && (
        <>
          {step === 'choose' && (
            <>
              {draft &&
                draft.needs.length > 0 &&
                settled &&
                !settled.blocked &&
                !isTurnedAnyway && (
                  <Button
                    className={styles.way}
                    onClick={() => tap({ act: 'turn', index: current })}
                  >
                    {words.show}
                  </Button>
                )}
              <Button
                className={styles.way}
                disabled={!settled || settled.blocked !== null || drafts.length >= LETTERS.length}
                aria-label={words.another}
                onClick={() => tap({ act: 'another' })}
              >
                {narrow || drafts.length > 1 ? words.anotherShort : words.another}
              </Button>
              {!narrow && <NameButton desk={{ ordering, tap }} />}
            </>
          )}
          {step === 'ask' && drafts.length > 1 && (
            <p className={styles.changing}>{words.askAgainHint(LETTERS.charAt(current))}</p>
          )}
          {drafts.length > 1 && (
            <Button className={styles.way} onClick={() => tap({ act: 'drop' })}>
              {words.drop(LETTERS.charAt(current))}
            </Button>
          )}
        </>
      )}
      {drafts.length === 1 && (
        <Button className={styles.way} onClick={() => tap({ act: 'start-over' })}>
          {changing ? leave : words.startOver}
        </Button>
      )}
    </div>
  )
}
