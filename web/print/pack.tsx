import { byNumber } from '../../core/plan/merged-steps.ts'
import { schemeOfPlan } from '../map/scheme-of-plan.ts'
import { FirstPage } from './first-page.tsx'
import { HazardPage } from './hazard-page.tsx'
import { LabelPage, NoticePage } from './label-page.tsx'
import type { PackProps } from './pack-props.ts'
import { RiskPage } from './risk-page.tsx'
import { PageRules } from './running.tsx'
import { layoutPx, printed } from './scheme-figure.tsx'
import { ShoppingPage } from './shopping-page.tsx'
import { StepPage } from './step-page.tsx'

export type { PackProps }

/**
 * The whole pack: page 1, a bench sheet a step, shopping, hazards, risk assessment, labels, notices. One layout for A4 and Letter; its style
 * sheet is `print.css`, which whoever shows it brings along with `scheme.css` and the font.
 */
export function Pack(props: PackProps) {
  const { library, plan, evaluation, depictions, today } = props
  const version = props.version ?? plan.edition?.number
  const whole = schemeOfPlan({
    library,
    depictions,
    plan,
    evaluation,
    ...(props.beneath === undefined ? {} : { beneath: props.beneath.yields }),
    otherMakers: new Map(),
    makeable: new Set(),
    pane: layoutPx,
    form: 'wide',
  })
  const scheme = whole === null ? null : printed(whole)
  const steps = [...evaluation.steps].sort((a, b) => byNumber(a.number, b.number))
  return (
    <div class="pack" lang="en">
      <PageRules title={plan.title} bench={plan.settings.bench} today={today} {...(version === undefined ? {} : { version })} />
      <FirstPage {...props} scheme={scheme} />
      {steps.map(step => (
        <StepPage {...props} step={step} scheme={scheme} key={step.transformation} />
      ))}
      <ShoppingPage {...props} />
      <HazardPage {...props} />
      <RiskPage {...props} />
      <LabelPage {...props} />
      <NoticePage {...props} />
    </div>
  )
}
