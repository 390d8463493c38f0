import { useMemo, useState } from 'react'
import { Awake } from '#components/device/awake-notice.tsx'
import { SoundToggle } from '#components/device/sound-toggle.tsx'
import { useKnock } from '#components/device/use-device.ts'
import { AskPanel } from '#components/hand-over/ask-panel.tsx'
import { ComingLine, Recent } from '#components/hand-over/coming-and-gone.tsx'
import { FoundPanel } from '#components/hand-over/found-panel.tsx'
import styles from '#components/hand-over/hand-over.module.css'
import { HeldList, ToFindList } from '#components/hand-over/kept-lists.tsx'
import { NotRight } from '#components/hand-over/not-right.tsx'
import { PastList } from '#components/hand-over/past-list.tsx'
import { PaidLine, ShelfCard } from '#components/hand-over/shelf-card.tsx'
import { useAlarms } from '#components/hand-over/use-alarms.ts'
import { useKeptPlace } from '#components/hand-over/use-kept-place.ts'
import { HandOverWordsProvider, useHandOverWords } from '#components/hand-over/words.tsx'
import { useActing } from '#components/live/acting.ts'
import { Connection } from '#components/live/connection.tsx'
import { useCrew } from '#components/live/crew.tsx'
import { useServerTime } from '#components/live/server-time.ts'
import { useGuard } from '#components/ui/settled.ts'
import {
  type HandedOver,
  handOverView,
  type Kept,
  type OnShelf,
} from '#lib/rooms/shelf/views/hand-over.ts'
import { mixedUpView } from '#lib/rooms/shelf/views/mixed-up.ts'
import { shelfShown } from '#lib/rooms/shelf/views/shelf-shown.ts'
import type { RunningState } from '#lib/service/state.ts'

interface Chosen {
  readonly why: 'ask' | 'wrong' | 'found' | 'mixed-up'
  readonly name: string
}

function Work({ state }: { readonly state: RunningState }) {
  const words = useHandOverWords()
  const [chosen, setChosen] = useState<Chosen | null>(null)
  const { said, busy, act, hush } = useActing(words.loadRefusals)
  const names = useCrew((view) => view.names)
  const now = useServerTime()
  const minute = Math.floor(now / 1000)
  const view = useMemo(() => handOverView(state, minute * 1000), [state, minute])
  const [showsAll, setShowsAll] = useState(false)
  const { places, keep } = useKeptPlace(view.shelf)
  const { shown, more, isDense } = shelfShown(places, showsAll)
  const guard = useGuard()
  useKnock('made', state.made)
  useAlarms(view, hush)

  // A second tap lands on the card that moved up: it isn't meant for it.
  const once = (act: () => void) => () => {
    if (!guard.isOpen()) return
    guard.close()
    act()
  }
  const handOver = ({ ticket, letter, name }: HandedOver | (typeof view.shelf)[number]) =>
    once(() => {
      setChosen(null)
      keep(name)
      void act({ type: 'handOver', ticket, letter }, words.isHandedOver(name))
    })()

  const onShelf = view.shelf.find((one) => one.name === chosen?.name)
  const wentOut = view.recent.find((one) => one.name === chosen?.name)
  const mixedUp = chosen?.why === 'mixed-up' ? mixedUpView(state, chosen.name, now) : null
  const wrongOne = mixedUp ? onShelf : chosen?.why === 'wrong' ? (onShelf ?? wentOut) : undefined
  const notSure = (name: string) => setChosen({ why: 'mixed-up', name })
  const lost = view.toFind.find((one) => one.name === chosen?.name)
  const back = () => setChosen(null)
  const pay = ({ ticket }: OnShelf, paid: boolean) =>
    void act({ type: 'pay', ticket, paid }, words.isPaid(ticket, paid))
  const answer = ({ ticket, letter }: Kept, foodInIt: boolean, done: string) =>
    once(() => {
      back()
      void act({ type: 'acknowledge', ticket, letter, foodInIt }, done)
    })()

  if (chosen?.why === 'found' && lost)
    return (
      <FoundPanel
        kept={lost}
        busy={busy}
        onBack={back}
        onFound={(isBack) =>
          answer(lost, isBack, isBack ? words.isFoundBack(lost.name) : words.isFoundTold(lost.name))
        }
      />
    )
  if (chosen?.why === 'ask' && onShelf)
    return (
      <AskPanel
        build={onShelf}
        busy={busy}
        paidLine={
          <PaidLine
            build={onShelf}
            currency={state.station.currency}
            busy={busy}
            onPay={(paid) => pay(onShelf, paid)}
          />
        }
        onBack={back}
        onHandOver={() => handOver(onShelf)}
        onNotSure={() => notSure(onShelf.name)}
      />
    )
  if (wrongOne)
    return (
      <NotRight
        key={chosen?.why}
        wrong={wrongOne}
        onShelf={onShelf}
        mixedUp={mixedUp}
        isAlone={view.shelf.length + view.held.length < 2}
        acting={{ busy, act }}
        once={once}
        onUnpay={(build) => pay(build, false)}
        onNotSure={notSure}
        onBack={back}
      />
    )
  const recent = (
    <Recent
      isFolded={isDense}
      recent={view.recent}
      count={view.handedOver}
      now={now}
      onWrong={(name) => setChosen({ why: 'wrong', name })}
    />
  )
  return (
    <div className={styles.screen} data-dense={isDense || undefined}>
      <header className={styles.top}>
        <h1>{words.title}</h1>
        {isDense && <ComingLine coming={view.coming} />}
        {isDense && recent}
        <Connection />
        <SoundToggle />
        <Awake />
        <p className={styles.said} role="status" data-kind={said?.kind ?? 'none'}>
          {said?.text}
        </p>
      </header>
      <div className={styles.places}>
        {view.toFind.length + view.held.length + view.toThrowOut.length > 0 && (
          <div className={styles.first}>
            <ToFindList
              toFind={view.toFind}
              now={now}
              onFound={({ name }) => setChosen({ why: 'found', name })}
            />
            <PastList
              past={view.toThrowOut}
              timeZone={state.station.timeZone}
              busy={busy}
              onThrownOut={({ name: id, because }, initials) => {
                const reason = because === 'time' ? 'past-time' : because
                const command = { type: 'throwOut', what: 'build', id, reason, initials } as const
                once(() => void act(command, words.isPastOut(id)))()
              }}
            />
            <HeldList
              held={view.held}
              busy={busy}
              onThrownOut={(kept) => {
                const isAgain = kept.why.reason === 'off-sale'
                answer(kept, true, (isAgain ? words.isOutAgain : words.isThrownOut)(kept.name))
              }}
            />
          </div>
        )}
        {places.length === 0 ? (
          <p className={styles.nothing}>{words.nothing}</p>
        ) : (
          <ul className={styles.shelf} aria-label={words.shelf} data-dense={isDense || undefined}>
            {shown.map((build) =>
              'height' in build ? (
                <li
                  key={build.name}
                  className={styles.gone}
                  style={{ minHeight: build.height }}
                  aria-hidden="true"
                >
                  {words.isHandedOver(build.name)}
                </li>
              ) : (
                <ShelfCard
                  key={build.name}
                  build={build}
                  guest={build.nameKey === null ? null : (names[build.nameKey] ?? null)}
                  now={now}
                  timeZone={state.station.timeZone}
                  currency={state.station.currency}
                  busy={busy}
                  acts={{
                    handOver,
                    ask: ({ name }) => setChosen({ why: 'ask', name }),
                    wrong: ({ name }) => setChosen({ why: 'wrong', name }),
                    pay,
                  }}
                />
              ),
            )}
            {(more > 0 || showsAll) && isDense && (
              <li className={styles.more}>
                <button type="button" onClick={() => setShowsAll(!showsAll)}>
                  {more > 0
                    ? words.more(
                        more,
                        view.shelf.slice(-more).map(({ name }) => name),
                      )
                    : words.fewer}
                </button>
              </li>
            )}
          </ul>
        )}
      </div>
      {!isDense && <ComingLine coming={view.coming} />}
      {!isDense && recent}
    </div>
  )
}

/** Giving out what is made while a service is open. */
export function HandOverWork({ state }: { readonly state: RunningState }) {
  return (
    <HandOverWordsProvider>
      <Work state={state} />
    </HandOverWordsProvider>
  )
}
