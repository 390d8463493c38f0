'use client'

import { useState } from 'react'
import page from '#components/access/page.module.css'
import { useAccess } from '#components/access/use-access.ts'
import { FoodPanel } from '#components/receiving/food-panel.tsx'
import { History } from '#components/receiving/history.tsx'
import { LineToReceive, placeToReceive } from '#components/receiving/line-to-receive.tsx'
import styles from '#components/receiving/panel.module.css'
import type { Told } from '#components/receiving/use-receive.ts'
import { ReceivingWordsProvider, useReceivingWords } from '#components/receiving/words.tsx'
import { Notch } from '#components/ui/notch.tsx'
import { Note } from '#components/ui/note.tsx'
import { foodsInOrder, nextToReceive, type ReceivingShown } from '#lib/larder/receiving-view.ts'

const LOOK_EVERY_MS = 5_000

function Receiving() {
  const words = useReceivingWords()
  const { seen, refused, again } = useAccess<ReceivingShown>('/larder/deliveries', LOOK_EVERY_MS)
  const [chosen, setChosen] = useState<string | null>(null)
  const [said, setSaid] = useState<Told | null>(null)
  const isShut = refused === 'not-joined' || refused === 'not-yours'
  // What is being typed stays, and is sent once the device is let in again.
  if (isShut && (seen === null || chosen === null)) return <Note kind="no">{words.notLead}</Note>
  if (seen === null)
    return (
      <p>{(refused as string | null) === 'no-such-station' ? words.noStation : words.looking}</p>
    )
  const foods = foodsInOrder(seen)
  const food = foods.find(({ ingredient }) => ingredient === chosen) ?? null
  const next = food && nextToReceive(seen, food.ingredient)
  const onTold = (told: Told): void => {
    setSaid(told)
    if (told.is !== 'no') setChosen(next?.ingredient ?? null)
    void again()
  }
  return (
    <>
      <div className={styles.told} role="status">
        {said === null ? (
          refused === null ? (
            <p>{words.what}</p>
          ) : (
            <Note kind="watch">{isShut ? words.notLead : words.lost}</Note>
          )
        ) : (
          <Note kind={said.is}>
            {said.what}{' '}
            {said.unread !== undefined && (
              <a
                href={`/menu/label?station=${encodeURIComponent(seen.station)}&ingredient=${encodeURIComponent(said.unread)}`}
              >
                {words.readLabel}
              </a>
            )}
          </Note>
        )}
      </div>
      {seen.clockJumpedBy !== null && <Note kind="watch">{words.jumped}</Note>}
      <Notch
        about={food ? [placeToReceive(seen, food.ingredient)] : []}
        className={styles.notch ?? ''}
      >
        <LineToReceive
          shown={seen}
          chosen={chosen}
          onChoose={(one) => {
            setChosen(one === chosen ? null : one)
            setSaid(null)
          }}
        />
        {food && (
          <FoodPanel
            key={food.ingredient}
            food={food}
            shown={seen}
            next={next?.name ?? null}
            onTold={onTold}
            onBack={() => setChosen(null)}
          />
        )}
      </Notch>
      {food === null && <History shown={seen} />}
    </>
  )
}

function Deliveries() {
  const words = useReceivingWords()
  return (
    <main className={`${page.page} ${styles.page}`}>
      <header className={styles.top}>
        <h1>{words.title}</h1>
        <a href="/larder">{words.toLarder}</a>
      </header>
      <Receiving />
    </main>
  )
}

/** What is delivered: the line with the crates of each pan, one food after the other in its notch. */
export function DeliveriesScreen() {
  return (
    <ReceivingWordsProvider>
      <Deliveries />
    </ReceivingWordsProvider>
  )
}
