'use client'

import { useEffect, useState } from 'react'
import { AdultFields } from '#components/access/adult-fields.tsx'
import { isRefused, type LetIn, type Refused, tell } from '#components/access/ask.ts'
import styles from '#components/access/page.module.css'
import { RefusedSaid } from '#components/access/refused-said.tsx'
import { Place, Room, Slab } from '#components/access/room.tsx'
import { useAccess } from '#components/access/use-access.ts'
import { AccessWordsProvider, useAccessWords } from '#components/access/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { Notch } from '#components/ui/notch.tsx'
import { Note } from '#components/ui/note.tsx'
import { Panel } from '#components/ui/panel.tsx'
import { inFragment } from '#lib/access/code-entry.ts'
import type { AccessNow, LineDrawn, MakeHouse } from '#lib/access/http.ts'
import { adultLacks, NOBODY, type TypedAdult } from '#lib/access/new-adult.ts'
import type { Role } from '#lib/service/roles.ts'

const LOOK_EVERY_MS = 5_000

type Step = 'lead' | 'in-charge' | 'made'

interface Two {
  readonly lead: TypedAdult
  readonly inCharge: TypedAdult
}

/** The house while it is made: who answers for it is written in as it is typed. */
function Drawn({
  step,
  two,
  line,
}: {
  readonly step: Step
  readonly two: Two
  readonly line: LineDrawn | null
}) {
  const nameAt = (role: Role) =>
    role === 'lead' ? two.lead.name : role === 'in-charge' ? two.inCharge.name : ''
  return (
    <Room
      is={step === 'made' ? 'made' : 'missing'}
      isSmall={step !== 'made'}
      line={line}
      door={step === 'made' ? 'open' : 'shut'}
      place={(role) => {
        const name = nameAt(role).trim()
        return (
          <Place role={role} is={name === '' ? 'empty' : 'taken'}>
            {name !== '' && <Slab name={name} is={step === 'made' ? 'here' : 'missing'} />}
          </Place>
        )
      }}
    />
  )
}

function Made({ two }: { readonly two: Two }) {
  const { house: words } = useAccessWords()
  return (
    <Panel title={words.made} label={words.made}>
      <p className={styles.said}>{words.madeWhat(two.lead.name, two.inCharge.name)}</p>
      <div className={styles.acts}>
        <a className={styles.way} href="/devices">
          {words.toDevices}
        </a>
      </div>
    </Panel>
  )
}

function Steps({
  secret,
  two,
  step,
  onTwo,
  onStep,
}: {
  readonly secret: string
  readonly two: Two
  readonly step: 'lead' | 'in-charge'
  readonly onTwo: (two: Two) => void
  readonly onStep: (step: Step) => void
}) {
  const { house: words, refused: saidOf } = useAccessWords()
  const [refused, setRefused] = useState<Refused | null>(null)
  const [isBusy, setBusy] = useState(false)
  const isLead = step === 'lead'
  const adult = isLead ? two.lead : two.inCharge
  const others = isLead ? [] : [two.lead]
  const lacks = adultLacks(adult, others)
  const make = async () => {
    if (isBusy) return
    setBusy(true)
    setRefused(null)
    const asked: MakeHouse = { secret, ...two }
    const answer = await tell<LetIn>('/access/make', asked)
    setBusy(false)
    if (isRefused(answer)) return setRefused(answer)
    history.replaceState(null, '', location.pathname)
    onStep('made')
  }
  const forward = () => {
    if (lacks !== null) return
    if (isLead) onStep('in-charge')
    else void make()
  }
  const said = {
    'no-name': words.lacksName,
    'too-short': adult.passphrase === '' ? words.lacksPassphrase : words.lacksLonger,
    'same-passphrase': words.lacksOther,
  } as const
  return (
    <Panel
      className={styles.panel ?? ''}
      key={step}
      title={isLead ? words.lead : words.inCharge}
      label={isLead ? words.lead : words.inCharge}
      {...(isLead ? {} : { back: words.back, onBack: () => onStep('lead') })}
    >
      <form
        className={styles.form}
        onSubmit={(event) => {
          event.preventDefault()
          forward()
        }}
      >
        <p className={styles.said}>
          {words.step(isLead ? 1 : 2)} · {isLead ? words.leadWhat : words.inChargeWhat}
        </p>
        <AdultFields
          adult={adult}
          others={others.map(({ passphrase }) => passphrase)}
          onAdult={(next) => onTwo(isLead ? { ...two, lead: next } : { ...two, inCharge: next })}
        />
        <RefusedSaid refused={refused} />
        <div className={styles.acts}>
          <Button
            kind="main"
            size="large"
            type="submit"
            disabled={isBusy}
            lacks={lacks === null ? null : lacks in said ? said[lacks as 'no-name'] : saidOf[lacks]}
          >
            {isLead ? words.next : words.make}
          </Button>
        </div>
      </form>
    </Panel>
  )
}

function HouseNow() {
  const words = useAccessWords()
  const { seen, refused, again } = useAccess<AccessNow>('/access', LOOK_EVERY_MS)
  const [secret, setSecret] = useState<string | null>(null)
  const [step, setStep] = useState<Step>('lead')
  const [two, setTwo] = useState<Two>({ lead: NOBODY, inCharge: NOBODY })
  useEffect(() => setSecret(inFragment(location.hash)), [])
  const title = step === 'made' ? words.house.made : words.house.title
  const isBefore = step !== 'made' && seen?.house === 'made'
  const body = () => {
    if (step === 'made') return <Made two={two} />
    if (isBefore)
      return (
        <Panel title={words.house.already} label={words.house.already}>
          <p className={styles.said}>{words.house.alreadyWhat}</p>
          <div className={styles.acts}>
            <a className={styles.way} href="/join">
              {words.join.signOn}
            </a>
          </div>
        </Panel>
      )
    if (secret === '')
      return (
        <Panel title={words.house.noSecret} label={words.house.noSecret}>
          <p className={styles.said}>{words.house.noSecretWhat}</p>
          <div className={styles.links}>
            <a href="/">{words.toFirstPage}</a>
          </div>
        </Panel>
      )
    if (seen === null || secret === null)
      return (
        <Note>
          {refused === null ? words.connecting : words.lost}{' '}
          {refused !== null && (
            <Button kind="quiet" onClick={() => void again()}>
              {words.again}
            </Button>
          )}
        </Note>
      )
    return <Steps secret={secret} two={two} step={step} onTwo={setTwo} onStep={setStep} />
  }
  return (
    <main className={styles.page}>
      <header className={styles.top}>
        <h1>{isBefore ? words.titles.product : title}</h1>
        <p>{step === 'made' || isBefore ? '' : words.house.what}</p>
      </header>
      <Notch
        about={step === 'made' || isBefore || secret === '' ? [] : [step]}
        className={styles.room ?? ''}
      >
        <Drawn step={isBefore ? 'made' : step} two={two} line={seen?.line ?? null} />
        {body()}
      </Notch>
    </main>
  )
}

/** Whoever has the terminal's secret makes the house: its lead, and its person in charge. */
export function HouseScreen() {
  return (
    <AccessWordsProvider>
      <HouseNow />
    </AccessWordsProvider>
  )
}
