import styles from '#components/assembly/pan.module.css'
import foot from '#components/assembly/pan-foot.module.css'
import signs from '#components/assembly/pan-signs.module.css'
import { ScoopSign } from '#components/assembly/scoop-sign.tsx'
import { type AssemblyWords, useAssemblyWords } from '#components/assembly/words.tsx'
import { mlFrom } from '#lib/measure/kitchen-units.ts'
import type { VolumeTool } from '#lib/measure/portion-tools.ts'
import type { PanForBuild, TakePan } from '#lib/rooms/making/views/assembly-pan.ts'
import type { Component } from '#lib/station/station-document.ts'

const unitOf = (words: AssemblyWords, tool: TakePan['tool'], count: number): string => {
  switch (tool.tool) {
    case 'scoop':
    case 'ladle':
    case 'spoodle':
    case 'measure':
      return words.level
    case 'bottle':
      return words.squeeze(count)
    case 'tongs':
      return words.tongs(count)
    case 'piece':
    case 'tongs-pieces':
      return words.piece(count)
    case 'cup':
      return words.cup(count)
  }
}

/** A tool that stands in, in one short word. */
const toolName = (words: AssemblyWords, tool: VolumeTool): string => {
  switch (tool.tool) {
    case 'scoop':
      return words.scoop(tool.number)
    case 'ladle':
    case 'spoodle':
      return `${words.sayFluidOunces(mlFrom(tool.flOz, 'flOz'))} ${words[tool.tool]}`
    case 'measure':
      return words.measureSize(tool.size, tool.unit)
  }
}

function Tool({ pan }: { readonly pan: TakePan }) {
  const words = useAssemblyWords()
  const { tool } = pan
  if (pan.warm)
    return (
      <span>
        <b>{words.warm}</b>
        <span className={foot.under}>{words.seconds(pan.warm.seconds)}</span>
      </span>
    )
  switch (tool.tool) {
    case 'scoop':
      return <ScoopSign number={tool.number} plain={pan.plainHandle} />
    case 'tongs':
      return (
        <span className={foot.small}>
          {words.about}
          <span className={foot.under}>{words.sayWeight(tool.grams * 1000)}</span>
        </span>
      )
    case 'cup':
      return (
        <span className={foot.small}>
          {words.lidded}
          <span className={foot.under}>{words.sayFluidOunces(mlFrom(tool.flOz, 'flOz'))}</span>
        </span>
      )
    case 'ladle':
    case 'spoodle':
      return (
        <span className={foot.small}>
          {words[tool.tool]}
          <span className={foot.under}>{words.sayFluidOunces(mlFrom(tool.flOz, 'flOz'))}</span>
        </span>
      )
    case 'measure':
      return (
        <span className={foot.small}>
          {words.measure}
          <span className={foot.under}>{words.measureSize(tool.size, tool.unit)}</span>
        </span>
      )
    case 'bottle':
      return <span className={foot.small}>{words.bottle}</span>
    case 'tongs-pieces':
      return <span className={foot.small}>{words.withTongs}</span>
    case 'piece':
      return null
  }
}

/** What went into the pan by a wrong scoop, and stays in it until it is emptied and washed. */
function Soiled({ by }: { readonly by: readonly string[] }) {
  const words = useAssemblyWords()
  if (by.length === 0) return null
  return <span className={signs.soiled}>{words.soiled(by)}</span>
}

function BackUpSign() {
  const words = useAssemblyWords()
  return (
    <span className={signs.backUp}>
      <svg viewBox="0 0 44 22" className={signs.lidded} aria-hidden="true">
        <path d="M2 10h40M18 10V4h8v6M6 10l4 10h24l4-10" />
      </svg>
      <b>
        {words.backUp.map((word) => (
          <span key={word} className={signs.backUpWord}>
            {word}{' '}
          </span>
        ))}
      </b>
      <span className={signs.notThis}>{words.notThisPan}</span>
    </span>
  )
}

function Take({ pan }: { readonly pan: TakePan }) {
  const words = useAssemblyWords()
  return (
    <>
      {pan.fromBackup && <BackUpSign />}
      <div className={styles.middle}>
        {pan.instead && <b className={signs.standIn}>{words.standIn}</b>}
        <span className={styles.count}>{pan.count}</span>
        {pan.onTheSide ? (
          <span className={styles.side}>{words.onTheSide}</span>
        ) : (
          <span className={styles.unit}>{unitOf(words, pan.tool, pan.count)}</span>
        )}
        {pan.instead?.map(({ count, tool }) => (
          <b key={toolName(words, tool)} className={signs.andAlso}>
            {words.andAlso(count, toolName(words, tool))}
          </b>
        ))}
        {pan.stands !== 'sold' ? (
          <span className={signs.lacking}>{words.panIs[pan.stands]}</span>
        ) : (
          pan.lacking && <span className={signs.lacking}>{words.lacking}</span>
        )}
        {pan.hazards.length > 0 && <span className={signs.lacking}>{words.askInCharge}</span>}
        {pan.accepted.map((hazard) => (
          <span key={words.hazard(hazard)} className={signs.accepted}>
            {words.hazardAccepted(hazard)}
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
const hazardWords = (words: AssemblyWords, { hazards }: Extract<PanForBuild, { kind: 'away' }>) => {
  const declared = hazards.filter(({ why }) => why !== 'contact')
  const shown = declared.length > 0 ? declared : hazards.slice(0, 1)
  return [...new Map(shown.map((hazard) => [words.hazard(hazard), hazard]))]
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
  const words = useAssemblyWords()
  if (pan.kind === 'idle')
    return (
      <div className={styles.sliver} data-soiled={soiledBy.length > 0}>
        <span>
          {component.name}
          {soiledBy.length > 0 && <b> {words.soiledShort(soiledBy)}</b>}
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
            <strong className={styles.no}>{words.no}</strong>
          </div>
          <div className={foot.foot}>
            <span className={foot.small}>{words.because(pan.because, pan.leaveOut)}</span>
          </div>
        </>
      )}
      {pan.kind === 'away' && (
        <>
          <div className={styles.middle}>
            {pan.leftOut && <strong className={styles.no}>{words.no}</strong>}
            <span className={styles.lid}>{words.lidOn}</span>
          </div>
          <div className={foot.foot}>
            <span className={foot.hazards}>
              {hazardWords(words, pan).map(([said, { why }]) => (
                <b key={said} data-why={why}>
                  {said}{' '}
                </b>
              ))}
            </span>
          </div>
        </>
      )}
    </div>
  )
}
