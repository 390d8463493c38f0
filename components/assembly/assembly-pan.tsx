import styles from '#components/assembly/pan.module.css'
import foot from '#components/assembly/pan-foot.module.css'
import signs from '#components/assembly/pan-signs.module.css'
import { ScoopSign } from '#components/assembly/scoop-sign.tsx'
import type { Component } from '#lib/menu/station-document.ts'
import { mlFrom } from '#lib/quantity/kitchen-units.ts'
import type { VolumeTool } from '#lib/quantity/portion-tools.ts'
import { sayFluidOunces, sayWeight } from '#lib/quantity/say-amount.ts'
import type { PanForBuild, TakePan } from '#lib/views/assembly-pan.ts'
import { assemblyEn as say } from '#lib/words/assembly-en.ts'

const unitOf = (tool: TakePan['tool'], count: number): string => {
  switch (tool.tool) {
    case 'scoop':
    case 'ladle':
    case 'spoodle':
    case 'measure':
      return say.level
    case 'bottle':
      return say.squeeze(count)
    case 'tongs':
      return say.tongs
    case 'piece':
    case 'tongs-pieces':
      return say.piece(count)
    case 'cup':
      return say.cup(count)
  }
}

/** A tool that stands in, in one short word. */
const toolName = (tool: VolumeTool): string => {
  switch (tool.tool) {
    case 'scoop':
      return say.scoop(tool.number)
    case 'ladle':
    case 'spoodle':
      return `${sayFluidOunces(mlFrom(tool.flOz, 'flOz'))} ${say[tool.tool]}`
    case 'measure':
      return say.measureSize(tool.size, tool.unit)
  }
}

function Tool({ pan }: { readonly pan: TakePan }) {
  const { tool } = pan
  if (pan.warm)
    return (
      <span>
        <b>{say.warm}</b>
        <span className={foot.under}>{say.seconds(pan.warm.seconds)}</span>
      </span>
    )
  switch (tool.tool) {
    case 'scoop':
      return <ScoopSign number={tool.number} plain={pan.plainHandle} />
    case 'tongs':
      return (
        <span className={foot.small}>
          {say.about}
          <span className={foot.under}>{sayWeight(tool.grams * 1000)}</span>
        </span>
      )
    case 'cup':
      return (
        <span className={foot.small}>
          {say.lidded}
          <span className={foot.under}>{sayFluidOunces(mlFrom(tool.flOz, 'flOz'))}</span>
        </span>
      )
    case 'ladle':
    case 'spoodle':
      return (
        <span className={foot.small}>
          {say[tool.tool]}
          <span className={foot.under}>{sayFluidOunces(mlFrom(tool.flOz, 'flOz'))}</span>
        </span>
      )
    case 'measure':
      return (
        <span className={foot.small}>
          {say.measure}
          <span className={foot.under}>{say.measureSize(tool.size, tool.unit)}</span>
        </span>
      )
    case 'bottle':
      return <span className={foot.small}>{say.bottle}</span>
    case 'tongs-pieces':
      return <span className={foot.small}>{say.withTongs}</span>
    case 'piece':
      return null
  }
}

/** What went into the pan by a wrong scoop, and stays in it until it is emptied and washed. */
function Soiled({ by }: { readonly by: readonly string[] }) {
  if (by.length === 0) return null
  return <span className={signs.soiled}>{say.soiled(by)}</span>
}

function BackUpSign() {
  return (
    <span className={signs.backUp}>
      <svg viewBox="0 0 44 22" className={signs.lidded} aria-hidden="true">
        <path d="M2 10h40M18 10V4h8v6M6 10l4 10h24l4-10" />
      </svg>
      <b>
        {say.backUp.map((word) => (
          <span key={word} className={signs.backUpWord}>
            {word}{' '}
          </span>
        ))}
      </b>
      <span className={signs.notThis}>{say.notThisPan}</span>
    </span>
  )
}

function Take({ pan }: { readonly pan: TakePan }) {
  return (
    <>
      {pan.fromBackup && <BackUpSign />}
      <div className={styles.middle}>
        {pan.instead && <b className={signs.otherScoop}>{say.otherScoop}</b>}
        <span className={styles.count}>{pan.count}</span>
        {pan.onTheSide ? (
          <span className={styles.side}>{say.onTheSide}</span>
        ) : (
          <span className={styles.unit}>{unitOf(pan.tool, pan.count)}</span>
        )}
        {pan.instead?.map(({ count, tool }) => (
          <b key={toolName(tool)} className={signs.andAlso}>
            {say.andAlso(count, toolName(tool))}
          </b>
        ))}
        {pan.stands !== 'sold' ? (
          <span className={signs.lacking}>{say.stands[pan.stands]}</span>
        ) : (
          pan.lacking && <span className={signs.lacking}>{say.lacking}</span>
        )}
        {pan.hazards.length > 0 && <span className={signs.lacking}>{say.askInCharge}</span>}
        {pan.accepted.map((hazard) => (
          <span key={say.hazard(hazard)} className={signs.accepted}>
            {say.hazardAccepted(hazard)}
          </span>
        ))}
      </div>
      <div className={foot.foot}>
        <Tool pan={pan} />
      </div>
    </>
  )
}

/** What hazards say, each sentence once; what touches a pan only where its own word is no reason. */
const hazardWords = ({ hazards }: Extract<PanForBuild, { kind: 'away' }>) => {
  const declared = hazards.filter(({ why }) => why !== 'contact')
  const shown = declared.length > 0 ? declared : hazards.slice(0, 1)
  return [...new Map(shown.map((hazard) => [say.hazard(hazard), hazard]))]
}

const isNoted = (pan: TakePan): boolean =>
  pan.lacking ||
  pan.instead !== null ||
  pan.stands !== 'sold' ||
  pan.hazards.length > 0 ||
  pan.accepted.length > 0

/** One pan of the line as one build sees it. */
export function AssemblyPan({
  pan,
  component,
  soiledBy,
}: {
  readonly pan: PanForBuild
  readonly component: Component
  /** Names of what another scoop brought into it. */
  readonly soiledBy: readonly string[]
}) {
  if (pan.kind === 'idle')
    return (
      <div className={styles.sliver} data-soiled={soiledBy.length > 0}>
        <span>
          {component.name}
          {soiledBy.length > 0 && <b> {say.soiledShort(soiledBy)}</b>}
        </span>
      </div>
    )
  return (
    <div
      className={styles.pan}
      data-kind={pan.kind}
      data-side={pan.kind === 'take' && pan.onTheSide}
      data-lacking={pan.kind === 'take' && (pan.lacking || pan.stands !== 'sold')}
      data-instead={pan.kind === 'take' && pan.instead !== null}
      data-backup={pan.kind === 'take' && pan.fromBackup}
      data-noted={soiledBy.length > 0 || (pan.kind === 'take' && isNoted(pan))}
    >
      <h2 className={styles.name}>
        {component.short.map((line) => (
          <span key={line}>{line} </span>
        ))}
      </h2>
      <Soiled by={soiledBy} />
      {pan.kind === 'take' && <Take pan={pan} />}
      {pan.kind === 'no' && (
        <>
          <div className={styles.middle}>
            <strong className={styles.no}>{say.no}</strong>
          </div>
          <div className={foot.foot}>
            <span className={foot.small}>{say.because(pan.because, pan.leaveOut)}</span>
          </div>
        </>
      )}
      {pan.kind === 'away' && (
        <>
          <div className={styles.middle}>
            {pan.leftOut && <strong className={styles.no}>{say.no}</strong>}
            <span className={styles.lid}>{say.lidOn}</span>
          </div>
          <div className={foot.foot}>
            <span className={foot.hazards}>
              {hazardWords(pan).map(([words, { why }]) => (
                <b key={words} data-why={why}>
                  {words}{' '}
                </b>
              ))}
            </span>
          </div>
        </>
      )}
    </div>
  )
}
