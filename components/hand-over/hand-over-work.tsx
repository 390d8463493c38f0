import { useMemo, useState } from 'react'
import { useKnock } from '#components/device/use-sound.ts'
import { FoundPanel } from '#components/hand-over/found-panel.tsx'
import { GivePanel } from '#components/hand-over/give-panel.tsx'
import styles from '#components/hand-over/hand-over.module.css'
import { FirstOfAll } from '#components/hand-over/kept-lists.tsx'
import { RecentPanel, UnpaidPanel } from '#components/hand-over/lists-panel.tsx'
import { MakingStand } from '#components/hand-over/making-stand.tsx'
import { NotRight } from '#components/hand-over/not-right.tsx'
import { IN_SIGHT, Shelf } from '#components/hand-over/shelf.tsx'
import { Top } from '#components/hand-over/top.tsx'
import { useAlarms } from '#components/hand-over/use-alarms.ts'
import { useGone } from '#components/hand-over/use-gone.ts'
import { usePlaces } from '#components/hand-over/use-places.ts'
import { HandOverWordsProvider, useHandOverWords } from '#components/hand-over/words.tsx'
import { useActing } from '#components/live/acting.ts'
import { useCrew } from '#components/live/crew.tsx'
import { useServerTime } from '#components/live/server-time.ts'
import { useGuard } from '#components/ui/settled.ts'
import { handOverView, type Kept, type OnShelf } from '#lib/rooms/shelf/views/hand-over.ts'
import { mixedUpView } from '#lib/rooms/shelf/views/mixed-up.ts'
import { boardsOf } from '#lib/rooms/shelf/views/places.ts'
import { beingMade, standsOf } from '#lib/rooms/shelf/views/stands.ts'
import { unpaidList } from '#lib/rooms/shelf/views/unpaid-list.ts'
import type { RunningState } from '#lib/service/state.ts'

/** What the panel is about instead of the parcel that is picked. */
type Open =
  | { readonly why: 'wrong' | 'found' | 'mixed-up'; readonly name: string }
  | { readonly why: 'recent' | 'unpaid' }

function Work({ state }: { readonly state: RunningState }) {
  const words = useHandOverWords()
  const { said, busy, act, hush } = useActing(words.loadRefusals)
  const names = useCrew((view) => view.names)
  const now = useServerTime()
  const second = Math.floor(now / 1000) * 1000
  const view = useMemo(() => handOverView(state, second), [state, second])
  const unpaid = useMemo(() => unpaidList(state), [state])
  const [open, setOpen] = useState<Open | null>(null)
  const [picked, setPicked] = useState<{ readonly name: string } | null>(null)
  const [picks, setPicks] = useState(0)
  const [isAsking, setAsking] = useState(false)
  const { gone, keep } = useGone(view.shelf)
  const { stands, missing } = useMemo(
    () => standsOf(state, view.shelf, second),
    [state, view.shelf, second],
  )
  const isFirst = view.toFind.length + view.held.length + view.toThrowOut.length > 0
  // What was handed over keeps its place until the finger that did it is gone.
  const standing = gone
    ? [
        ...stands.filter(({ names: all }) => !all.includes(gone.name)),
        { names: [gone.name], atEnd: gone.atEnd },
      ]
    : stands
  const { places, columns, isPhone } = usePlaces(standing, isFirst)
  const guard = useGuard()
  useKnock('made', state.made)
  useAlarms(view, hush)

  const back = () => setOpen(null)
  const once = (what: () => void) => () => {
    if (!guard.isOpen()) return
    guard.close()
    what()
  }
  const onShelf = (name: string | null) => view.shelf.find((one) => one.name === name)
  const chosen = gone?.build ?? onShelf(picked?.name ?? null) ?? view.shelf[0]
  const pick = (name: string) => {
    // One that is kept apart is asked about at once: that tap was the wish to give it out.
    setAsking(onShelf(name)?.askFirst ?? false)
    setPicked({ name })
    setPicks(picks + 1)
    setOpen(null)
  }
  const handOver = (build: OnShelf) =>
    once(() => {
      const { ticket, letter, name } = build
      keep(build, places[name]?.atEnd ?? false)
      setAsking(false)
      setPicked(null)
      void act({ type: 'handOver', ticket, letter }, words.isHandedOver(name))
    })()
  const pay = (ticket: number, paid = true) =>
    act({ type: 'pay', ticket, paid }, words.isPaid(ticket, paid))
  const answer = ({ ticket, letter }: Kept, foodInIt: boolean, done: string) =>
    once(() => {
      back()
      void act({ type: 'acknowledge', ticket, letter, foodInIt }, done)
    })()
  const time = (at: number) => words.sayTime(at, state.station.timeZone)
  const money = (cents: number) => words.sayCents(cents, state.station.currency)
  const guestOf = (build: OnShelf) =>
    build.nameKey === null ? null : (names[build.nameKey] ?? null)
  const untilOf = ({ until }: OnShelf) =>
    until === null
      ? ''
      : words.until(time(until.collectBy), until.throwOutAt && time(until.throwOutAt))

  const named = open && 'name' in open ? open.name : null
  const wentOut = view.recent.find((one) => one.name === named)
  const mixedUp = open?.why === 'mixed-up' ? mixedUpView(state, open.name, now) : null
  const wrongOne = mixedUp
    ? onShelf(named)
    : open?.why === 'wrong'
      ? (onShelf(named) ?? wentOut)
      : undefined
  const lost = open?.why === 'found' ? view.toFind.find((one) => one.name === named) : undefined

  const panel = lost ? (
    <FoundPanel
      kept={lost}
      busy={busy}
      onBack={back}
      onFound={(isBack) =>
        answer(lost, isBack, isBack ? words.isFoundBack(lost.name) : words.isFoundTold(lost.name))
      }
    />
  ) : wrongOne ? (
    <NotRight
      key={open?.why}
      wrong={wrongOne}
      onShelf={onShelf(named)}
      mixedUp={mixedUp}
      isAlone={view.shelf.length + view.held.length < 2}
      acting={{ busy, act }}
      once={once}
      onUnpay={({ ticket }) => void pay(ticket, false)}
      onNotSure={(name) => setOpen({ why: 'mixed-up', name })}
      onBack={back}
    />
  ) : open?.why === 'recent' ? (
    <RecentPanel
      recent={view.recent}
      now={now}
      onWrong={(name) => setOpen({ why: 'wrong', name })}
      onBack={back}
    />
  ) : open?.why === 'unpaid' ? (
    <UnpaidPanel
      list={unpaid}
      currency={state.station.currency}
      now={now}
      busy={busy}
      onPaid={({ ticket }) => void pay(ticket)}
      onBack={back}
    />
  ) : chosen ? (
    <GivePanel
      key={chosen.name === picked?.name ? `${chosen.name} ${picks}` : chosen.name}
      build={chosen}
      isPicked={chosen.name === picked?.name}
      guest={guestOf(chosen)}
      until={untilOf(chosen)}
      money={money(chosen.totalCents)}
      isGone={gone?.name === chosen.name}
      busy={busy}
      acts={{
        handOver,
        pay: ({ ticket }) => void pay(ticket),
        payAndGive: (build) =>
          void pay(build.ticket).then((isTaken) => {
            if (isTaken) handOver(build)
          }),
        problem: ({ name }) => setOpen({ why: 'wrong', name }),
        notSure: ({ name }) => {
          setAsking(false)
          setOpen({ why: 'mixed-up', name })
        },
        setAsking,
      }}
    />
  ) : null

  return (
    <div
      className={styles.screen}
      data-first={isFirst || undefined}
      data-panel={mixedUp ? 'whole' : panel ? 'below' : 'none'}
      data-crowded={boardsOf(places) > 2 || undefined}
    >
      <Top
        said={said}
        count={boardsOf(places) > IN_SIGHT ? view.shelf.length : null}
        unpaid={unpaid}
        handedOver={view.recent.length > 0 ? view.handedOver : null}
        money={money}
        onUnpaid={() => setOpen({ why: 'unpaid' })}
        onRecent={() => setOpen({ why: 'recent' })}
      />
      {isFirst && (
        <FirstOfAll
          view={view}
          timeZone={state.station.timeZone}
          now={now}
          busy={busy}
          onFound={({ name }) => setOpen({ why: 'found', name })}
          onPast={({ name: id, because }, initials) => {
            const reason = because === 'time' ? 'past-time' : because
            const command = { type: 'throwOut', what: 'build', id, reason, initials } as const
            once(() => void act(command, words.isPastOut(id)))()
          }}
          onHeld={(kept) => {
            const isAgain = kept.why.reason === 'off-sale'
            answer(kept, true, (isAgain ? words.isOutAgain : words.isThrownOut)(kept.name))
          }}
        />
      )}
      {!mixedUp && (
        <div className={styles.shelfSide}>
          {view.coming.length > 0 && (
            <MakingStand making={beingMade(state)} coming={view.coming} station={state.station} />
          )}
          {Object.keys(places).length === 0 ? (
            <p className={styles.nothing}>{words.nothing}</p>
          ) : (
            <Shelf
              shelf={view.shelf}
              stands={stands}
              missing={missing}
              gone={gone?.name ?? null}
              places={places}
              columns={columns}
              isPhone={isPhone}
              station={state.station}
              guestOf={guestOf}
              collectBy={({ until }, isShort) =>
                until && (isShort ? words.byThen : words.collectBy)(time(until.collectBy))
              }
              chosen={open === null ? (chosen?.name ?? null) : named}
              isBare={isAsking}
              onPick={pick}
            />
          )}
        </div>
      )}
      {panel}
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
