'use client'

import { type ReactNode, useEffect, useState } from 'react'
import { Place, Room, Slab } from '#components/access/room.tsx'
import { useAccess } from '#components/access/use-access.ts'
import { WAY_OF } from '#components/access/ways.ts'
import { AccessWordsProvider, useAccessWords } from '#components/access/words.tsx'
import { CalibrateCard } from '#components/device/calibrate-card.tsx'
import { CrewProvider } from '#components/live/crew.tsx'
import { WordsProvider } from '#components/live/words.tsx'
import { InChargeCard } from '#components/start/in-charge-card.tsx'
import { InChargeWordsProvider, useInChargeWords } from '#components/start/in-charge-words.tsx'
import { PlannedCard, useFollowing } from '#components/start/planned-card.tsx'
import { ServiceCard } from '#components/start/service-card.tsx'
import styles from '#components/start/start.module.css'
import { Stations } from '#components/start/stations.tsx'
import { StartWordsProvider, useStartWords } from '#components/start/words.tsx'
import type { AccessNow } from '#lib/access/http.ts'
import { mayOpen, standingOf } from '#lib/access/open-here.ts'
import type { Role } from '#lib/service/roles.ts'

/** Another page of this device may join or leave meanwhile. */
const LOOK_EVERY_MS = 3_000

/** Drawn before there is a connection as well, so that nothing moves when there is. */
function FirstCards({
  service,
  inCharge,
}: {
  readonly service?: ReactNode
  readonly inCharge?: ReactNode
}) {
  const words = useStartWords()
  const { title } = useInChargeWords()
  return (
    <div className={styles.first}>
      <section className={styles.card} aria-labelledby="service-title">
        <h2 id="service-title">{words.service}</h2>
        {service ?? <p>{words.connecting}</p>}
      </section>
      <section className={styles.card} aria-labelledby="in-charge-title">
        <h2 id="in-charge-title">{title}</h2>
        {inCharge ?? <p>{words.connecting}</p>}
      </section>
    </div>
  )
}

/** A place that leads to its screen where this device may open it, and says so where it may not. */
function PlaceWay({ role, now }: { readonly role: Role; readonly now: AccessNow | null }) {
  const words = useAccessWords()
  const you = now?.you?.role === role ? now.you : null
  const slab = you && <Slab name={you.name} is="here" />
  if (role === 'in-charge' && you === null)
    return now?.house === 'made' ? (
      <a href="/join#">
        <Place role={role} is="empty" what={words.placeWhat[role]} />
      </a>
    ) : (
      <Place role={role} is="shut" what={words.placeWhat[role]} />
    )
  if (!mayOpen(now, role)) return <Place role={role} is="shut" what={words.start.shut} />
  return (
    <a href={role === 'in-charge' ? '#in-charge-title' : WAY_OF[role] + location.search}>
      <Place role={role} is="taken" what={words.placeWhat[role]}>
        {slab}
      </Place>
    </a>
  )
}

/** What is open to this device, in a sentence, and the ways that are not along the line. */
function Ways({ now }: { readonly now: AccessNow | null }) {
  const words = useStartWords()
  const access = useAccessWords()
  const standing = standingOf(now)
  const said = {
    looking: access.connecting,
    in: now?.you ? access.start.yours(now.you.role, now.line?.name ?? null) : '',
    demo: access.start.demoOnly,
    'demo-unmade': access.start.notMade,
    unmade: access.start.notMadeAway,
    out: access.start.notIn,
  }[standing]
  return (
    <>
      <p className={styles.standing} data-standing={standing}>
        {said} {standing === 'demo-unmade' && access.start.notMadeHow}
        {standing === 'in' && !mayOpen(now, 'lead') && access.start.onlyYours}
      </p>
      <ul className={styles.ways}>
        {(standing === 'out' || standing === 'demo') && (
          <li>
            <a href="/join" data-kind="main">
              <b>{access.start.join}</b>
            </a>
          </li>
        )}
        {standing === 'in' && mayOpen(now, 'lead') && (
          <li>
            <a href="/devices">
              <b>{access.start.devices}</b> <span>{access.start.devicesWhat}</span>
            </a>
          </li>
        )}
        <li>
          <a href={now?.page === 'demo' ? '/sheet?demo' : '/sheet'}>
            <b>{words.sheet.name}</b> <span>{words.sheet.what}</span>
          </a>
        </li>
        {standing === 'in' && (
          <li>
            <a href="/prep">
              <b>{access.titles.prep}</b>
            </a>
          </li>
        )}
        {standing === 'in' && mayOpen(now, 'lead') && (
          <li>
            <a href="/larder">
              <b>{access.titles.larder}</b>
            </a>
          </li>
        )}
        {standing === 'in' && mayOpen(now, 'lead') && (
          <li>
            <a href="/deliveries">
              <b>{access.titles.deliveries}</b>
            </a>
          </li>
        )}
        {standing === 'in' && mayOpen(now, 'lead') && (
          <li>
            <a href="/privacy">
              <b>{access.start.privacy}</b> <span>{access.start.privacyWhat}</span>
            </a>
          </li>
        )}
      </ul>
    </>
  )
}

function StartNow() {
  const words = useStartWords()
  const access = useAccessWords()
  const { seen, again } = useAccess<AccessNow>('/access', LOOK_EVERY_MS)
  const [service, setService] = useState<string | null>(null)
  useEffect(() => setService(new URLSearchParams(location.search).get('service')), [])
  const through = useFollowing(service)
  return (
    <main className={styles.page}>
      <header className={styles.header}>
        <h1>{words.titles.product}</h1>
        <p>{words.what}</p>
      </header>
      <nav className={styles.room} aria-label={access.room}>
        <Room
          is={seen?.house === 'made' ? 'made' : 'missing'}
          line={seen?.line}
          door={seen?.you ? 'open' : 'shut'}
          place={(role) => <PlaceWay role={role} now={seen} />}
        />
        <Ways now={seen} />
        {seen && <Stations now={seen} again={again} />}
      </nav>
      {mayOpen(seen, 'lead') && (
        <CrewProvider
          role="lead"
          {...(through ? { through } : {})}
          key={service}
          fallback={<FirstCards />}
        >
          <FirstCards
            service={service === null ? <ServiceCard /> : <PlannedCard />}
            inCharge={<InChargeCard />}
          />
        </CrewProvider>
      )}
      <section className={styles.cautions} aria-labelledby="cautions-title">
        <h2 id="cautions-title">{words.cautions}</h2>
        <ul>
          {words.caution.map(({ head, text }) => (
            <li key={head}>
              <strong>{head}</strong> {text}
            </li>
          ))}
        </ul>
      </section>
      <div className={styles.calibrate}>
        <CalibrateCard />
      </div>
    </main>
  )
}

export function StartScreen() {
  return (
    <WordsProvider>
      <StartWordsProvider>
        <InChargeWordsProvider>
          <AccessWordsProvider>
            <StartNow />
          </AccessWordsProvider>
        </InChargeWordsProvider>
      </StartWordsProvider>
    </WordsProvider>
  )
}
