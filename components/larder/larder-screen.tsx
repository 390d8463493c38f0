'use client'

import { nanoid } from 'nanoid'
import { useState } from 'react'
import { isRefused, tell } from '#components/access/ask.ts'
import page from '#components/access/page.module.css'
import { useAccess } from '#components/access/use-access.ts'
import styles from '#components/larder/larder.module.css'
import { LarderWordsProvider, useLarderWords } from '#components/larder/larder-words.tsx'
import { LotJobs } from '#components/larder/lot-jobs.tsx'
import { goesBefore } from '#components/larder/lot-said.ts'
import { LotTile } from '#components/larder/lot-tile.tsx'
import type { Told } from '#components/larder/take-into.tsx'
import { Button } from '#components/ui/button.tsx'
import { Notch } from '#components/ui/notch.tsx'
import { Note } from '#components/ui/note.tsx'
import type { LarderAnswer, LarderCommand, LarderRefusal } from '#lib/larder/command.ts'
import type { LarderShown, LotShown } from '#lib/larder/shelf-view.ts'

const LOOK_EVERY_MS = 3_000

const SHELVES = ['bound', 'cooling', 'cold', 'dry', 'frozen'] as const

const shelfOf = ({ bound, kept }: LotShown): (typeof SHELVES)[number] =>
  bound === null ? kept : 'bound'

type Done = LarderShown & { readonly answer: LarderAnswer | { readonly answer: 'not taken' } }

function Shelves() {
  const words = useLarderWords()
  const { seen, refused, again } = useAccess<LarderShown>('/larder/now', LOOK_EVERY_MS)
  const [chosen, setChosen] = useState<string | null>(null)
  const [said, setSaid] = useState<Told | null>(null)
  const zone = seen?.lots[0]?.timeZone ?? Intl.DateTimeFormat().resolvedOptions().timeZone
  const time = (at: number) => words.sayTime(at, zone)
  const why = (refusal: LarderRefusal): string => {
    const own = words.refused[refusal.code]
    if (own !== undefined) return own
    if (refusal.code.startsWith('lot-wrong') || !('code' in refusal)) return words.notDone
    switch (refusal.code) {
      case 'no-such-lot':
      case 'lot-gone':
      case 'lot-bound':
      case 'lot-unread':
      case 'lot-no-days-left':
      case 'lot-holds-less':
      case 'older-lot':
      case 'larder-clock-unsure':
        return words.sayLotProblem(refusal, time, (id) => id, words.sayMuch)
      default:
        return words.notDone
    }
  }
  const ask = async (command: LarderCommand, passphrase?: string): Promise<void> => {
    const proof = passphrase === undefined ? {} : { proof: { passphrase } }
    const told = await tell<Done>('/larder/do', { id: nanoid(), command, ...proof })
    if (isRefused(told)) return setSaid({ is: 'no', what: words.refused[told.code] ?? words.lost })
    const { answer } = told
    if (answer.answer === 'accepted') {
      // A reading is recorded, and may have said that the food is lost.
      const now = 'lot' in command ? told.lots.find((one) => one.lot === command.lot) : undefined
      const lost = now?.bound ?? null
      setSaid(
        now === undefined || lost === null
          ? { is: 'done', what: words.done }
          : { is: 'no', what: words.nowBound(now.name, lost) },
      )
      setChosen(lost === null ? null : (now?.lot ?? null))
    } else
      setSaid({
        is: 'no',
        what: answer.answer === 'refused' ? why(answer.refusal) : words.notDone,
      })
    await again()
  }
  const onTold = (told: Told): void => {
    setSaid(told)
    if (told.is === 'done') setChosen(null)
    void again()
  }
  if (refused === 'not-joined' || refused === 'not-yours')
    return <Note kind="no">{words.notLead}</Note>
  if (seen === null) return <p>{words.looking}</p>
  const lot = seen.lots.find((one) => one.lot === chosen) ?? null
  return (
    <>
      {refused !== null && <Note kind="watch">{words.lost}</Note>}
      {seen.clockJumpedBy !== null && (
        <div className={styles.told}>
          <Note kind="watch">{words.jumped}</Note>
          <Button kind="main" onClick={() => void ask({ type: 'confirmLarderClock' })}>
            {words.clockIsRight(time(seen.now))}
          </Button>
        </div>
      )}
      {said && (
        <Note kind={said.is} role="status">
          {said.what}
        </Note>
      )}
      {seen.slips.map((slip) => (
        <div key={slip.lot} className={styles.told}>
          <span>{words.slip(slip.name)}</span>
          <Button onClick={() => void ask({ type: 'lotIsBack', lot: slip.lot })}>
            {words.isBack}
          </Button>
        </div>
      ))}
      {seen.lots.length === 0 ? (
        <p className={styles.empty}>{words.empty}</p>
      ) : (
        <nav className={page.links} aria-label={words.papers}>
          <a href={`/paper/larder${location.search}`}>{words.toLabels}</a>
        </nav>
      )}
      <Notch about={lot ? [lot.lot] : []} className={styles.notch ?? ''}>
        <div className={styles.shelves}>
          {SHELVES.filter((shelf) => seen.lots.some((one) => shelfOf(one) === shelf)).map(
            (shelf) => (
              <section key={shelf} className={styles.shelf} aria-label={words.shelves[shelf]}>
                <h2>{words.shelves[shelf]}</h2>
                <div className={styles.row}>
                  {seen.lots
                    .filter((one) => shelfOf(one) === shelf)
                    .map((one) => (
                      <LotTile
                        key={one.lot}
                        lot={one}
                        now={seen.now}
                        isChosen={one.lot === chosen}
                        onChoose={() => setChosen(one.lot === chosen ? null : one.lot)}
                      />
                    ))}
                </div>
              </section>
            ),
          )}
        </div>
        {lot && (
          <LotJobs
            key={lot.lot}
            lot={lot}
            older={goesBefore(lot, seen.lots)}
            now={seen.now}
            onOlder={setChosen}
            ask={(command, passphrase) => void ask(command, passphrase)}
            onTold={onTold}
            onBack={() => setChosen(null)}
          />
        )}
      </Notch>
    </>
  )
}

function Larder() {
  const words = useLarderWords()
  return (
    <main className={`${page.page} ${styles.page}`}>
      <header className={page.top}>
        <h1>{words.title}</h1>
        <p>{words.what}</p>
        <a href="/deliveries">{words.toDeliveries}</a>
        <a href="/">{words.toFirstPage}</a>
      </header>
      <Shelves />
    </main>
  )
}

/** The larder, drawn as its shelves: what is on which, what goes first, what is due next. */
export function LarderScreen() {
  return (
    <LarderWordsProvider>
      <Larder />
    </LarderWordsProvider>
  )
}
