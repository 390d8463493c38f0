'use client'

import { useState } from 'react'
import { AddAdultForm } from '#components/access/add-adult-form.tsx'
import type { AskedOfAdults } from '#components/access/adult-rows.tsx'
import { ChangePassphraseForm, TakeOutForm } from '#components/access/change-adult-form.tsx'
import { DevicesAt } from '#components/access/devices-at.tsx'
import styles from '#components/access/page.module.css'
import { Place, Room, Slab } from '#components/access/room.tsx'
import { useAccess } from '#components/access/use-access.ts'
import { AccessWordsProvider, useAccessWords } from '#components/access/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { Notch } from '#components/ui/notch.tsx'
import { Note } from '#components/ui/note.tsx'
import { areKnocks, areMany, devicesAt } from '#lib/access/at-places.ts'
import type { AccessNow, DeviceList, LineDrawn } from '#lib/access/http.ts'
import type { Role } from '#lib/service/roles.ts'

const LOOK_EVERY_MS = 1_500
const SELDOM_MS = 60_000

function Devices({
  list,
  line,
  again,
}: {
  readonly list: DeviceList
  readonly line: LineDrawn | null
  readonly again: () => void
}) {
  const [chosen, setChosen] = useState<Role | null>(null)
  const [asked, setAsked] = useState<AskedOfAdults | null>(null)
  const [said, setSaid] = useState<string | null>(null)
  const namesAt = (role: Role) => devicesAt(role, list.devices)
  const choose = (role: Role) => {
    setAsked(null)
    setSaid(null)
    setChosen(chosen === role ? null : role)
  }
  const close = () => {
    setSaid(null)
    setAsked(null)
  }
  const done = (what: string) => {
    setSaid(what)
    setAsked(null)
    again()
  }
  return (
    <Notch about={chosen === null ? [] : [chosen]} className={styles.room ?? ''}>
      <Room
        is="made"
        line={line}
        isSmall={chosen !== null}
        door={chosen === null ? 'shut' : 'open'}
        place={(role) => {
          const devices = namesAt(role)
          return (
            <button type="button" aria-expanded={chosen === role} onClick={() => choose(role)}>
              <Place role={role} is={devices.length === 0 ? 'empty' : 'taken'}>
                {devices.map(({ device, name, isHere }) => (
                  <Slab key={device} name={name} is={isHere ? 'here' : 'away'} />
                ))}
              </Place>
            </button>
          )
        }}
      />
      {chosen !== null && asked === null && (
        <DevicesAt
          key={chosen}
          role={chosen}
          list={list}
          onChanged={again}
          said={said}
          onAdult={setAsked}
          onClose={() => setChosen(null)}
        />
      )}
      {asked?.to === 'add' && <AddAdultForm onAdded={again} onClose={close} />}
      {asked?.to === 'change' && (
        <ChangePassphraseForm adult={asked.adult} onDone={done} onClose={close} />
      )}
      {asked?.to === 'take-out' && (
        <TakeOutForm adult={asked.adult} devices={asked.devices} onDone={done} onClose={close} />
      )}
    </Notch>
  )
}

function DevicesNow() {
  const words = useAccessWords()
  const { seen, refused, again } = useAccess<DeviceList>('/access/devices', LOOK_EVERY_MS)
  const access = useAccess<AccessNow>('/access', SELDOM_MS)
  const isShut = refused === 'not-yours' || refused === 'not-joined'
  return (
    <main className={styles.page}>
      <header className={styles.top}>
        <h1>{words.devices.title}</h1>
        <p>{isShut ? '' : words.devices.what}</p>
        <a href="/privacy">{words.devices.privacy}</a>
        <a href="/">{words.toFirstPage}</a>
      </header>
      {isShut ? (
        <Note kind="no">{words.devices.notLead}</Note>
      ) : (
        <>
          {refused !== null && (
            <Note kind="watch" role="status">
              {words.lost}{' '}
              <Button kind="quiet" onClick={() => void again()}>
                {words.again}
              </Button>
            </Note>
          )}
          {seen && areMany(seen.attempts) && (
            <Note kind="watch">
              {words.devices.attempts(seen.attempts.wrong, seen.attempts.addresses)}
            </Note>
          )}
          {seen && areKnocks(seen.attempts) && (
            <Note kind="watch">{words.devices.knocks(seen.attempts.refused)}</Note>
          )}
          {seen ? (
            <Devices list={seen} line={access.seen?.line ?? null} again={() => void again()} />
          ) : (
            <p>{words.connecting}</p>
          )}
        </>
      )}
    </main>
  )
}

/** The lead's: who is in, where; a code that lets one in; sending one out. */
export function DevicesScreen() {
  return (
    <AccessWordsProvider>
      <DevicesNow />
    </AccessWordsProvider>
  )
}
