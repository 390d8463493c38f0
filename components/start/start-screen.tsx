'use client'

import type { ReactNode } from 'react'
import { CalibrateCard } from '#components/device/calibrate-card.tsx'
import { CrewProvider } from '#components/live/crew.tsx'
import { WordsProvider } from '#components/live/words.tsx'
import { FlowPicture } from '#components/start/flow-picture.tsx'
import { InChargeCard } from '#components/start/in-charge-card.tsx'
import { InChargeWordsProvider, useInChargeWords } from '#components/start/in-charge-words.tsx'
import { ServiceCard } from '#components/start/service-card.tsx'
import styles from '#components/start/start.module.css'
import { TabletsCard } from '#components/start/tablets-card.tsx'
import { StartWordsProvider, useStartWords } from '#components/start/words.tsx'

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
      <section className={styles.service} aria-labelledby="service-title">
        <h2 id="service-title">{words.service}</h2>
        {service ?? <p>{words.connecting}</p>}
      </section>
      <section className={styles.service} aria-labelledby="in-charge-title">
        <h2 id="in-charge-title">{title}</h2>
        {inCharge ?? <p>{words.connecting}</p>}
      </section>
    </div>
  )
}

function StartNow() {
  const words = useStartWords()
  return (
    <main className={styles.page}>
      <header className={styles.header}>
        <h1>{words.titles.product}</h1>
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

export function StartScreen() {
  return (
    <WordsProvider>
      <StartWordsProvider>
        <InChargeWordsProvider>
          <StartNow />
        </InChargeWordsProvider>
      </StartWordsProvider>
    </WordsProvider>
  )
}
