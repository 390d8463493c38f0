import { useState } from 'react'
import { keepHands, keptHands, useLapse } from '#components/job/kept-hands.ts'
import { HandsFields } from '#components/receiving/hands-fields.tsx'
import { PadSlots } from '#components/receiving/pad-slots.tsx'
import styles from '#components/receiving/panel.module.css'
import { SendBack } from '#components/receiving/send-back.tsx'
import { type Told, useReceive } from '#components/receiving/use-receive.ts'
import { useReceivingWords } from '#components/receiving/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { Choice } from '#components/ui/choice.tsx'
import { Field } from '#components/ui/field.tsx'
import { Note } from '#components/ui/note.tsx'
import { SAME_PRODUCT, type SentBack as Why } from '#lib/larder/delivery.ts'
import { beginEntry, judgeEntry, sentBackFor } from '#lib/larder/receiving-entry.ts'
import {
  comparedWith,
  type FoodToReceive,
  type ReceivingShown,
} from '#lib/larder/receiving-view.ts'
import { ARRIVALS } from '#lib/safety/receiving.ts'

interface FoodPanelProps {
  readonly food: FoodToReceive
  readonly shown: ReceivingShown
  /** Name of the food that is next; null where this is the last. */
  readonly next: string | null
  readonly onTold: (told: Told) => void
  readonly onBack: () => void
}

/** One food of a delivery, in the notch that grows out of its crate: what it is, how it came, received or not. */
export function FoodPanel({ food, shown, next, onTold, onBack }: FoodPanelProps) {
  const words = useReceivingWords()
  const compared = comparedWith(food)
  const [entry, setEntry] = useState(() => beginEntry(food.comes, compared !== null))
  const [hands, setHands] = useState(keptHands)
  const [asksComes, setAsksComes] = useState(food.comes === null)
  const [goesBack, setGoesBack] = useState(false)
  const { busy, send } = useReceive()
  useLapse(() => setHands((now) => ({ ...now, initials: '' })))
  const change = (part: Partial<typeof entry>) => setEntry((now) => ({ ...now, ...part }))
  const here = { ...shown, ...food, limits: food.limits ?? shown.limits }
  const judged = judgeEntry(food.ingredient, entry, here, hands)
  const { said, against, question, cools } = judged
  const isOther = entry.same === 'other' || entry.same === 'not-sure'
  const last = food.deliveries.find(({ sentBack }) => sentBack === null) ?? null

  const act = async (why: Why | null): Promise<void> => {
    if (said === null || busy) return
    const signed = { delivery: said, initials: hands.initials.trim() }
    const told = await send(
      why === null
        ? { type: 'receiveDelivery', ...signed }
        : { type: 'sendBackDelivery', ...signed, why },
    )
    if (told) return onTold(told)
    keepHands({ initials: hands.initials, probe: hands.probe })
    onTold(
      why !== null
        ? { is: 'done', what: words.doneBack(food.name, why) }
        : isOther
          ? { is: 'watch', what: words.doneUnread(food.name), unread: food.ingredient }
          : { is: 'done', what: words.done(food.name) },
    )
  }

  return (
    <section className={styles.panel} data-notch-panel aria-label={words.panel(food.name)}>
      <div className={styles.what}>
        <header>
          <h2>{food.name}</h2>
          <p>
            {last === null
              ? words.never
              : `${words.last(words.sayDay(last.at, shown.timeZone))}, ${words.lastLot(last.lot)}`}
          </p>
          {(food.maker !== null || food.pack !== null) && (
            <p>{words.maker(food.maker, food.pack)}</p>
          )}
        </header>
        {compared === null ? (
          <Note kind="watch">{words.firstUnread}</Note>
        ) : (
          <Choice
            legend={compared === 'label' ? words.first.legend(food.readOn) : words.same.legend}
            ways={SAME_PRODUCT.map((id) => ({
              id,
              label: id === 'same' && compared === 'label' ? words.first.same : words.same[id],
            }))}
            chosen={entry.same}
            onChoose={(same) => {
              // Another product may come in another way.
              const isAnew = same !== 'same' && food.comes !== null && !asksComes
              change({ same, needsNoCold: false, ...(isAnew ? { comes: null } : {}) })
              if (isAnew) setAsksComes(true)
            }}
          />
        )}
        {isOther && compared !== null && <Note kind="watch">{words.becomesUnread}</Note>}
        {asksComes ? (
          <Choice
            legend={words.comes.legend}
            ways={ARRIVALS.map((id) => ({ id, label: words.comes.ways[id] }))}
            chosen={entry.comes}
            onChoose={(comes) =>
              change({ comes, degrees: '', isSure: false, solid: null, needsNoCold: false })
            }
          />
        ) : (
          entry.comes !== null && (
            <p className={styles.comes}>
              <b>{words.comesAs(entry.comes)}</b>
              <button type="button" className={styles.little} onClick={() => setAsksComes(true)}>
                {words.otherWay}
              </button>
            </p>
          )
        )}
        {judged.asksCold && (
          <Choice
            legend={words.cold.legend(food.cold === 'itself')}
            ways={[
              { id: 'yes', label: words.cold.yes },
              { id: 'no', label: words.cold.no },
            ]}
            chosen={entry.needsNoCold ? 'no' : null}
            onChoose={(is) => change(is === 'no' ? { needsNoCold: true } : { comes: 'cold' })}
          />
        )}
        {entry.comes === 'frozen' && (
          <Choice
            legend={words.solid.legend}
            ways={[
              { id: 'yes', label: words.solid.yes },
              { id: 'no', label: words.solid.no },
            ]}
            chosen={entry.solid === null ? null : entry.solid ? 'yes' : 'no'}
            onChoose={(is) => change({ solid: is === 'yes' })}
          />
        )}
        {goesBack ? (
          <SendBack
            isSigned={hands.initials.trim() !== ''}
            canSay={said !== null}
            onWhy={(why) => void act(why)}
            onBack={() => setGoesBack(false)}
          />
        ) : (
          <div className={styles.foot}>
            <Button kind="quiet" className={styles.low ?? ''} onClick={onBack}>
              {words.cancel}
            </Button>
            {against === null && (
              <Button kind="quiet" className={styles.low ?? ''} onClick={() => setGoesBack(true)}>
                {words.sendBack}
              </Button>
            )}
          </div>
        )}
      </div>
      <div className={styles.pack}>
        <Field
          label={words.lot}
          value={entry.hasNoLot ? '' : entry.lot}
          maxLength={80}
          autoCapitalize="characters"
          spellCheck={false}
          onChange={(event) => change({ lot: event.target.value, hasNoLot: false })}
        />
        <div className={styles.none}>
          <button
            type="button"
            className={styles.little}
            aria-pressed={entry.hasNoLot}
            onClick={() => change({ hasNoLot: !entry.hasNoLot })}
          >
            {words.noLot}
          </button>
          <button
            type="button"
            className={styles.little}
            aria-pressed={entry.hasNoDate}
            onClick={() => change({ hasNoDate: !entry.hasNoDate })}
          >
            {words.noDate}
          </button>
        </div>
        <HandsFields hands={hands} onChange={setHands} />
        {question && (
          <Note kind="watch">
            {words.question(question)}
            {question.code === 'did-you-mean' && !question.must && (
              <button
                type="button"
                className={styles.little}
                onClick={() => change({ isSure: true })}
              >
                {words.isRight}
              </button>
            )}
          </Note>
        )}
        {against && (
          <Note kind="no" role="status">
            {words.against(against)}
          </Note>
        )}
        {against === null && cools && (
          <Note kind="watch">{words.cools(cools, here.limits.receivedCold, shown.scale)}</Note>
        )}
        {against === null && judged.useBy === shown.today && (
          <Note kind="watch">{words.lastDay}</Note>
        )}
        {entry.comes === 'eggs' && <Note>{words.eggsCold}</Note>}
        {against === null ? (
          <Button
            kind="main"
            className={styles.main ?? ''}
            disabled={busy}
            lacks={judged.lacks === null ? null : words.lacks[judged.lacks]}
            sub={next === null ? words.lastOne : words.receiveNext(next)}
            onClick={() => void act(null)}
          >
            {words.receive}
          </Button>
        ) : (
          <Button
            kind="no"
            className={styles.main ?? ''}
            disabled={busy}
            lacks={
              hands.initials.trim() === ''
                ? words.lacks.initials
                : judged.read && hands.probe.trim() === ''
                  ? words.lacks.probe
                  : null
            }
            sub={words.sendBackWhy(sentBackFor(against))}
            onClick={() => void act(sentBackFor(against))}
          >
            {words.sendBack}
          </Button>
        )}
      </div>
      <div className={styles.act}>
        <PadSlots entry={entry} judged={judged} shown={here} onChange={change} />
      </div>
    </section>
  )
}
