'use client'

import { useEffect, useState } from 'react'
import fields from '#components/access/adult-fields.module.css'
import { PassphraseLine } from '#components/access/adult-fields.tsx'
import { isRefused, type LetIn, type Refused, tell } from '#components/access/ask.ts'
import { ByCode } from '#components/access/by-code.tsx'
import styles from '#components/access/page.module.css'
import { RefusedSaid } from '#components/access/refused-said.tsx'
import { Place, Room, Slab } from '#components/access/room.tsx'
import { useAccess } from '#components/access/use-access.ts'
import { type Waiting, waitingHere } from '#components/access/waiting-here.ts'
import { WAY_OF } from '#components/access/ways.ts'
import { AccessWordsProvider, useAccessWords } from '#components/access/words.tsx'
import { keepHands } from '#components/job/kept-hands.ts'
import { Button } from '#components/ui/button.tsx'
import { Field } from '#components/ui/field.tsx'
import { Notch } from '#components/ui/notch.tsx'
import { Note } from '#components/ui/note.tsx'
import { Panel } from '#components/ui/panel.tsx'
import { codeSoFar, inFragment } from '#lib/access/code-entry.ts'
import type { AccessNow, LineDrawn, OwnDevice } from '#lib/access/http.ts'
import type { Role } from '#lib/service/roles.ts'

const LOOK_EVERY_MS = 10_000

/** What waits here and is another place's to send. */
const useWaiting = (): readonly Waiting[] => {
  const [waiting, setWaiting] = useState<readonly Waiting[]>([])
  useEffect(() => {
    void waitingHere().then(setWaiting, () => undefined)
  }, [])
  return waiting
}

function Picture({
  you,
  line,
}: {
  readonly you: OwnDevice | null
  readonly line: LineDrawn | null
}) {
  return (
    <Room
      is="made"
      line={line}
      isSmall={you === null}
      door={you === null ? 'shut' : 'open'}
      place={(role) =>
        you?.role === role ? (
          <Place role={role} is="taken">
            <Slab name={you.name} is="here" />
          </Place>
        ) : (
          <Place role={role} is="empty" />
        )
      }
    />
  )
}

/** It is in: what it became, and the way there. */
function IsIn({ you, line }: { readonly you: OwnDevice; readonly line: LineDrawn | null }) {
  const { join: words } = useAccessWords()
  const waiting = useWaiting().filter(({ role }) => role !== you.role)
  const [initials, setInitials] = useState('')
  const title = words.isIn(you.role, line?.name ?? null)
  return (
    <Panel title={title} label={title} facts={you.adult ? [] : [words.called(you.name)]}>
      {waiting.map(({ role, count }) => (
        <Note key={role} kind="watch">
          {words.waits(count, role)}
        </Note>
      ))}
      <div className={styles.acts}>
        <a
          className={styles.way}
          href={WAY_OF[you.role]}
          onClick={() => {
            if (initials.trim() !== '') keepHands({ initials })
          }}
        >
          {words.go(you.role)}
        </a>
        {you.role !== 'pick-up' && you.adult === null && (
          <div className={styles.initials}>
            <Field
              label={words.initials}
              maxLength={4}
              autoCapitalize="characters"
              value={initials}
              onChange={(event) => setInitials(event.target.value)}
            />
            <p>{words.initialsWhat}</p>
          </div>
        )}
      </div>
    </Panel>
  )
}

type Way = 'code' | 'name'

const ADULTS_AT: readonly Role[] = ['in-charge', 'lead']

function ByName({ onIn }: { readonly onIn: (you: OwnDevice) => void }) {
  const { join: words, house, passphrase: labels } = useAccessWords()
  const [name, setName] = useState('')
  const [passphrase, setPassphrase] = useState('')
  const [refused, setRefused] = useState<Refused | null>(null)
  const [isBusy, setBusy] = useState(false)
  const lacks =
    name.trim() === '' ? house.lacksName : passphrase === '' ? house.lacksPassphrase : null
  const signOn = async () => {
    if (isBusy || lacks !== null) return
    setBusy(true)
    setRefused(null)
    const answer = await tell<LetIn>('/access/sign-on', { name, passphrase })
    setBusy(false)
    setPassphrase('')
    if (isRefused(answer)) setRefused(answer)
    else onIn(answer.you)
  }
  return (
    <Panel title={words.nameTitle} label={words.nameTitle}>
      <form
        className={styles.form}
        onSubmit={(event) => {
          event.preventDefault()
          void signOn()
        }}
      >
        <p className={styles.said}>{words.signOnWhat}</p>
        <div className={fields.fields}>
          <Field
            label={labels.name}
            autoComplete="username"
            maxLength={40}
            value={name}
            onChange={(event) => setName(event.target.value)}
          />
          <PassphraseLine label={labels.passphrase} value={passphrase} onChange={setPassphrase} />
        </div>
        <RefusedSaid refused={refused} notIt={labels.notIt} />
        <div className={styles.acts}>
          <Button kind="main" size="large" type="submit" disabled={isBusy} lacks={lacks}>
            {words.signOn}
          </Button>
        </div>
      </form>
    </Panel>
  )
}

function JoinNow() {
  const words = useAccessWords()
  const { seen, again } = useAccess<AccessNow>('/access', LOOK_EVERY_MS)
  const [first, setFirst] = useState<string | null>(null)
  const [way, setWay] = useState<Way>('code')
  const [you, setYou] = useState<OwnDevice | null>(null)
  useEffect(() => {
    const from = () => {
      setFirst(codeSoFar(inFragment(location.hash)))
      // Used or not, it isn't there any more when the page is loaded anew.
      if (location.hash !== '') history.replaceState(null, '', location.pathname)
    }
    from()
    addEventListener('hashchange', from)
    return () => removeEventListener('hashchange', from)
  }, [])
  const { join } = words
  const line = seen?.line ?? null
  const comeIn = (as: OwnDevice) => {
    setYou(as)
    // Its station may be another than the one that was drawn for who stood at the door.
    void again()
  }
  if (you) {
    const own = seen?.you?.device === you.device ? line : null
    return (
      <main className={styles.page}>
        <header className={styles.top}>
          <h1>{words.titles.product}</h1>
        </header>
        <Notch about={[you.role]} className={styles.room ?? ''}>
          <Picture you={you} line={own} />
          <IsIn you={you} line={own} />
        </Notch>
      </main>
    )
  }
  return (
    <main className={styles.page}>
      <header className={styles.top}>
        <h1>{join.title}</h1>
        <p>
          {way === 'name' ? join.nameWhat : seen?.you ? join.inAlready(seen.you.role) : join.what}
        </p>
        <Button kind="quiet" onClick={() => setWay(way === 'code' ? 'name' : 'code')}>
          {way === 'code' ? join.byName : join.byCode}
        </Button>
      </header>
      {seen?.house === 'none' && <Note kind="watch">{words.refused['no-house']}</Note>}
      <Notch about={way === 'name' ? ADULTS_AT : []} className={styles.room ?? ''}>
        <Picture you={null} line={line} />
        {way === 'name' ? (
          <ByName onIn={comeIn} />
        ) : (
          first !== null && <ByCode key={first} first={first} onIn={comeIn} />
        )}
      </Notch>
    </main>
  )
}

/** A tablet comes in: by the code that a lead's screen shows, or an adult by name. */
export function JoinScreen() {
  return (
    <AccessWordsProvider>
      <JoinNow />
    </AccessWordsProvider>
  )
}
