'use client'

import type { ReactNode } from 'react'
import { CalibrateCard } from '#components/device/calibrate-card.tsx'
import { CrewProvider } from '#components/live/crew.tsx'
import { FlowPicture } from '#components/start/flow-picture.tsx'
import { InChargeCard } from '#components/start/in-charge-card.tsx'
import { ServiceCard } from '#components/start/service-card.tsx'
import styles from '#components/start/start.module.css'
import { TabletsCard } from '#components/start/tablets-card.tsx'
import { inChargeWords } from '#lib/words/in-charge-card-en.ts'
import { startWords as words } from '#lib/words/start-en.ts'
import { titles } from '#lib/words/titles-en.ts'

/** Drawn before there is a connection as well, so that nothing moves when there is. */
function FirstCards({
  service,
  inCharge,
}: {
  readonly service?: ReactNode
  readonly inCharge?: ReactNode
}) {
  return (
    <div className={styles.first}>
      <section className={styles.service} aria-labelledby="service-title">
        <h2 id="service-title">{words.service}</h2>
        {service ?? <p>{words.connecting}</p>}
      </section>
      <section className={styles.service} aria-labelledby="in-charge-title">
        <h2 id="in-charge-title">{inChargeWords.title}</h2>
        {inCharge ?? <p>{words.connecting}</p>}
      </section>
    </div>
  )
}

export function StartScreen() {
  return (
    <main className={styles.page}>
      <header className={styles.header}>
        <h1>{titles.product}</h1>
        <p>{words.what}</p>
      </header>
      <FlowPicture />
      <CrewProvider role="lead" fallback={<FirstCards />}>
        <FirstCards service={<ServiceCard />} inCharge={<InChargeCard />} />
      </CrewProvider>
      <TabletsCard />
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
