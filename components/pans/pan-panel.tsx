import { useState } from 'react'
import type { Acting } from '#components/live/acting.ts'
import { OtherScoop } from '#components/pans/other-scoop.tsx'
import { PanContact, WasBackup } from '#components/pans/pan-contact.tsx'
import styles from '#components/pans/panel.module.css'
import { Panel } from '#components/pans/panel.tsx'
import { PortionSteps } from '#components/pans/portion-steps.tsx'
import { SellingChoice } from '#components/pans/selling-choice.tsx'
import { useSettled } from '#components/ui/settled.ts'
import { nameIn } from '#lib/menu/name-in.ts'
import type { Pan } from '#lib/menu/station-document.ts'
import type { Command } from '#lib/service/decide.ts'
import type { RunningState } from '#lib/service/state.ts'
import { amountOf, isAsHeld, mostPortions, type PanPicture } from '#lib/views/pans.ts'
import { effectOfStopping } from '#lib/views/pans-to-do.ts'
import { holdsBefore } from '#lib/views/product-before.ts'
import { sayClock } from '#lib/words/clock-en.ts'
import { pansWords as words } from '#lib/words/pans-en.ts'

type Mode = 'refill' | 'count' | 'selling' | 'scoop'

interface PanPanelProps {
  readonly state: RunningState
  readonly pan: Pan
  readonly picture: PanPicture
  readonly acting: Acting
  readonly onBack: () => void
}

export function PanPanel({ state, pan, picture, acting, onBack }: PanPanelProps) {
  const held = Math.round(picture.amount / picture.each)
  const [mode, setMode] = useState<Mode>('refill')
  const [refill, setRefill] = useState(pan.usualPortions)
  const [count, setCount] = useState(held)
  const [washed, setWashed] = useState(false)
  const [isBackup, setBackup] = useState(true)
  const settled = useSettled(mode)
  const name = nameIn(state.station)(pan.component)
  const isEmpty = picture.amount === 0
  const asksBackup = !isEmpty && picture.backup !== null && picture.backup.readySince !== null
  const isSoiled = picture.soiledBy.length > 0
  const isMixed = holdsBefore(state, pan.id)
  const most = mostPortions(state, pan)
  const say = (portions: number) =>
    words.amount(amountOf(state, pan.component, portions), picture.unit)

  const send = async (type: 'load' | 'changePan' | 'correct', portions: number) => {
    if (!settled() || acting.busy) return
    const done = words.done[type](name, portions)
    const amount = amountOf(state, pan.component, portions)
    const at = { pan: pan.id, amount }
    const command: Command =
      type === 'load'
        ? { type, ...at, ...(isSoiled || isMixed ? { washed } : {}) }
        : type === 'changePan'
          ? { type, ...at, ...(asksBackup ? { backup: isBackup } : {}) }
          : { type, ...at }
    if (await acting.act(command, done)) onBack()
  }

  const facts = [
    isEmpty ? words.holdsNothing : words.holds(held, words.amount(picture.amount, picture.unit)),
    words.onTicketsFact(picture.onTickets),
    words.leftFact(picture.left),
    ...(picture.loadedAt === null
      ? []
      : [words.loadedFact(sayClock(picture.loadedAt, state.station.timeZone))]),
    ...(isMixed ? [words.beforeFact] : []),
    ...(isSoiled ? [words.soiledFact(picture.soiledBy.map(nameIn(state.station)))] : []),
  ]
  const toRefill = isEmpty ? words.loadPan : words.changePan
  const toSelling = picture.selling ? words.stopSelling : words.resumeSelling

  return (
    <Panel title={name} facts={facts} onBack={onBack}>
      {mode === 'selling' ? (
        <SellingChoice
          what="component"
          id={pan.component}
          name={name}
          selling={picture.selling}
          because={
            picture.selling
              ? [
                  ...words.effect(
                    effectOfStopping(state, pan.component),
                    pan.component,
                    nameIn(state.station),
                  ),
                  words.stopKept,
                ]
              : [words.resumeWhy(picture.left)]
          }
          acting={acting}
          onBack={onBack}
        />
      ) : mode === 'scoop' ? (
        <OtherScoop
          state={state}
          pan={pan}
          acting={acting}
          onDone={onBack}
          onBack={() => setMode('refill')}
        />
      ) : mode === 'refill' ? (
        <div className={styles.doing}>
          <PortionSteps
            label={isEmpty ? words.firstPan : words.newPan}
            value={refill}
            amount={say(refill)}
            least={1}
            most={most}
            onChange={setRefill}
          />
          <p>{isEmpty ? words.nothingGoesAway : words.goesAway(held)}</p>
          {isEmpty && (isSoiled || isMixed) && (
            <label className={styles.check}>
              <input
                type="checkbox"
                checked={washed}
                onChange={(event) => setWashed(event.target.checked)}
              />
              {words.washed}
            </label>
          )}
          {asksBackup && <WasBackup was={isBackup} busy={acting.busy} onChange={setBackup} />}
          <PanContact
            state={state}
            picture={picture}
            acting={acting}
            onScoop={() => setMode('scoop')}
          />
        </div>
      ) : (
        <div className={styles.doing}>
          <PortionSteps
            label={words.reallyHolds}
            value={count}
            amount={say(count)}
            least={0}
            most={most}
            onChange={setCount}
          />
          <p>
            {words.countWas(held)}{' '}
            {picture.onTickets > count && words.wouldBeShort(picture.onTickets)}
          </p>
        </div>
      )}
      {(mode === 'refill' || mode === 'count') && (
        <div className={styles.acts}>
          <button
            type="button"
            className={styles.main}
            disabled={
              acting.busy ||
              (mode === 'count' && isAsHeld(state, picture, count)) ||
              (mode === 'refill' && isEmpty && isSoiled && !washed)
            }
            onClick={() =>
              mode === 'count'
                ? void send('correct', count)
                : void send(isEmpty ? 'load' : 'changePan', refill)
            }
          >
            {mode === 'count' ? words.countIs(count) : toRefill}
          </button>
          <button
            type="button"
            className={styles.other}
            onClick={() => {
              setCount(held)
              setMode(mode === 'count' ? 'refill' : 'count')
            }}
          >
            {mode === 'count' ? toRefill : words.correct}
          </button>
          <button type="button" className={styles.other} onClick={() => setMode('selling')}>
            {toSelling}
          </button>
        </div>
      )}
    </Panel>
  )
}
