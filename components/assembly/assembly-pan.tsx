import styles from '#components/assembly/pan.module.css'
import { ScoopSign } from '#components/assembly/scoop-sign.tsx'
import type { Component, PortionRule } from '#lib/menu/station-document.ts'
import { mlFrom } from '#lib/quantity/kitchen-units.ts'
import { sayFluidOunces, sayWeight } from '#lib/quantity/say-amount.ts'
import type { PanForBuild, TakePan } from '#lib/views/assembly-pan.ts'
import { assemblyEn as say } from '#lib/words/assembly-en.ts'

const unitOf = (tool: PortionRule, count: number): string => {
  switch (tool.tool) {
    case 'scoop':
      return say.level
    case 'tongs':
      return say.tongs
    case 'piece':
      return say.piece(count)
    case 'cup':
      return say.cup(count)
  }
}

function Tool({ pan }: { readonly pan: TakePan }) {
  const { tool } = pan
  if (pan.warm)
    return (
      <span>
        <b>{say.warm}</b>
        <span className={styles.under}>{say.seconds(pan.warm.seconds)}</span>
      </span>
    )
  switch (tool.tool) {
    case 'scoop':
      return <ScoopSign number={tool.number} plain={pan.plainHandle} />
    case 'tongs':
      return (
        <span className={styles.small}>
          {say.about}
          <span className={styles.under}>{sayWeight(tool.grams * 1000)}</span>
        </span>
      )
    case 'cup':
      return (
        <span className={styles.small}>
          {say.lidded}
          <span className={styles.under}>{sayFluidOunces(mlFrom(tool.flOz, 'flOz'))}</span>
        </span>
      )
    case 'piece':
      return null
  }
}

function Take({ pan }: { readonly pan: TakePan }) {
  return (
    <>
      <div className={styles.middle}>
        <span className={styles.count}>{pan.count}</span>
        {pan.onTheSide ? (
          <span className={styles.side}>{say.onTheSide}</span>
        ) : (
          <span className={styles.unit}>{unitOf(pan.tool, pan.count)}</span>
        )}
        {pan.lacking && <span className={styles.lacking}>{say.lacking}</span>}
        {pan.hazards.length > 0 && <span className={styles.lacking}>{say.askInCharge}</span>}
      </div>
      <div className={styles.foot}>
        <Tool pan={pan} />
      </div>
    </>
  )
}

/** One pan of the line as one build sees it. */
export function AssemblyPan({
  pan,
  component,
}: {
  readonly pan: PanForBuild
  readonly component: Component
}) {
  if (pan.kind === 'idle')
    return (
      <div className={styles.sliver}>
        <span>{component.name}</span>
      </div>
    )
  return (
    <div
      className={styles.pan}
      data-kind={pan.kind}
      data-side={pan.kind === 'take' && pan.onTheSide}
      data-lacking={pan.kind === 'take' && pan.lacking}
    >
      <h2 className={styles.name}>
        {component.short.map((line) => (
          <span key={line}>{line} </span>
        ))}
      </h2>
      {pan.kind === 'take' && <Take pan={pan} />}
      {pan.kind === 'no' && (
        <>
          <div className={styles.middle}>
            <strong className={styles.no}>{say.no}</strong>
          </div>
          <div className={styles.foot}>
            <span className={styles.small}>{say.because(pan.because, pan.leaveOut)}</span>
          </div>
        </>
      )}
      {pan.kind === 'away' && (
        <>
          <div className={styles.middle}>
            {pan.leftOut && <strong className={styles.no}>{say.no}</strong>}
            <span className={styles.lid}>{say.lidOn}</span>
          </div>
          <div className={styles.foot}>
            <span className={styles.hazards}>
              {pan.hazards.map((hazard) => (
                <b key={hazard.code} data-declared={hazard.declared}>
                  {say.hazard(hazard)}{' '}
                </b>
              ))}
            </span>
          </div>
        </>
      )}
    </div>
  )
}
