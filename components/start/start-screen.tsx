'use client'

import { CalibrateCard } from '#components/device/calibrate-card.tsx'
import { CrewProvider } from '#components/live/crew.tsx'
import { FlowPicture } from '#components/start/flow-picture.tsx'
import { ServiceCard } from '#components/start/service-card.tsx'
import styles from '#components/start/start.module.css'
import { TabletsCard } from '#components/start/tablets-card.tsx'
import { startWords as words } from '#lib/words/start-en.ts'
import { titles } from '#lib/words/titles-en.ts'

export function StartScreen() {
  return (
    <main className={styles.page}>
      <header className={styles.header}>
        <h1>{titles.product}</h1>
        <p>{words.what}</p>
      </header>
      <FlowPicture />
      <section className={styles.service} aria-labelledby="service-title">
        <h2 id="service-title">{words.service}</h2>
        <CrewProvider role="lead" fallback={<p>{words.connecting}</p>}>
          <ServiceCard />
        </CrewProvider>
      </section>
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
