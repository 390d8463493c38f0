import styles from '#components/assembly/pan.module.css'
import { Tool, toolName, unitOf } from '#components/assembly/tool-sign.tsx'
import { type AssemblyWords, useAssemblyWords } from '#components/assembly/words.tsx'
import type { PanForBuild, TakePan } from '#lib/rooms/making/views/assembly-pan.ts'
import type { Component } from '#lib/station/station-document.ts'

/** A pan's name on its lines. */
export function PanName({ component }: { readonly component: Component }) {
  return (
    <h2 className={styles.name}>
      {component.short.map((line) => (
        <span key={line}>{line} </span>
      ))}
    </h2>
  )
}

/** A pan of no matter to a build: it keeps its place. */
export function Sliver({
  component,
  as,
  isHeard = false,
  more,
}: {
  readonly component: Component
  /** That it is in it, as before. */
  readonly as?: string | undefined
  /** That is drawn otherwise already. */
  readonly isHeard?: boolean
  /** What must be known of it though it isn't taken from. */
  readonly more?: string | undefined
}) {
  return (
    <div className={styles.sliver} data-as={as !== undefined} data-more={more !== undefined}>
      <span>
        {component.name}
        {as !== undefined && (
          <span className={isHeard ? 'visually-hidden' : undefined}>, {as}</span>
        )}
        {more !== undefined && <b> {more}</b>}
      </span>
    </div>
  )
}

/** What is noted of a pan that is taken from, each once. */
function Notes({ pan, soiledBy }: { readonly pan: TakePan; readonly soiledBy: readonly string[] }) {
  const words = useAssemblyWords()
  return (
    <div className={styles.notes}>
      {pan.instead?.map(({ count, tool }) => (
        <b key={toolName(words, tool)}>{words.andAlso(count, toolName(words, tool))}</b>
      ))}
      {pan.stands !== 'sold' ? (
        <span className={styles.lacking}>{words.panIs[pan.stands]}</span>
      ) : (
        pan.lacking && <span className={styles.lacking}>{words.lacking}</span>
      )}
      {pan.hazards.length > 0 && <span className={styles.lacking}>{words.askInCharge}</span>}
      {soiledBy.length > 0 && (
        <span className={styles.soiled}>
          {words.wentIn(soiledBy).map((line) => (
            <span key={line}>{line} </span>
          ))}
        </span>
      )}
      {pan.accepted.map((hazard) => (
        <span key={words.hazard(hazard)} className={styles.accepted}>
          {words.hazardAccepted(hazard)}
        </span>
      ))}
    </div>
  )
}

/** “no”, on the line of the counts. */
export function No() {
  const words = useAssemblyWords()
  return (
    <div className={styles.countPlace}>
      <span className={styles.count}>
        <strong className={styles.no}>{words.no}</strong>
      </span>
    </div>
  )
}

/** How much is taken and with what: the rows below a pan's name. */
export function Take({
  pan,
  soiledBy = [],
}: {
  readonly pan: TakePan
  readonly soiledBy?: readonly string[]
}) {
  const words = useAssemblyWords()
  return (
    <>
      {pan.fromBackup && (
        <b className={styles.sign} data-sign="backup">
          {words.backUp}
          <span className="visually-hidden">, {words.notThisPan}</span>
        </b>
      )}
      {pan.instead && <b className={styles.sign}>{words.standIn}</b>}
      <div className={styles.countPlace}>
        <span className={styles.count}>{pan.count}</span>
      </div>
      {pan.onTheSide ? (
        <span className={styles.side}>{words.onTheSide}</span>
      ) : (
        <span className={styles.unit}>{unitOf(words, pan.tool, pan.count)}</span>
      )}
      <Notes pan={pan} soiledBy={soiledBy} />
      <div className={styles.tool}>
        <Tool pan={pan} />
      </div>
    </>
  )
}

/** What keeps a pan shut, for who can't see the band; what touches it only where it has no word of its own. */
const hazardWords = (words: AssemblyWords, { hazards }: Extract<PanForBuild, { kind: 'away' }>) => {
  const declared = hazards.filter(({ why }) => why !== 'contact')
  const said = declared.length > 0 ? declared : hazards.slice(0, 1)
  return [...new Set(said.map((hazard) => words.hazard(hazard)))]
}

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
      <Sliver
        component={component}
        more={soiledBy.length > 0 ? words.soiledShort(soiledBy) : undefined}
      />
    )
  return (
    <div
      className={styles.pan}
      data-kind={pan.kind}
      data-side={pan.kind === 'take' && pan.onTheSide}
      data-lacking={pan.kind === 'take' && (pan.lacking || pan.stands !== 'sold')}
      data-instead={pan.kind === 'take' && pan.instead !== null}
      data-backup={pan.kind === 'take' && pan.fromBackup}
    >
      <PanName component={component} />
      {pan.kind === 'take' && <Take pan={pan} soiledBy={soiledBy} />}
      {pan.kind === 'no' && (
        <>
          <No />
          <span className={styles.because}>{words.because(pan.because, pan.leaveOut)}</span>
        </>
      )}
      {pan.kind === 'away' && (
        <>
          {pan.leftOut && <No />}
          <span className="visually-hidden">
            {words.lidOn} {hazardWords(words, pan).join(' ')}
          </span>
        </>
      )}
    </div>
  )
}
