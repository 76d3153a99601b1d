import type { Option } from './command.ts'

/** Options that choose among routes, the same for `routes` and `plan`. */
export const choosingOptions: Readonly<Record<string, Option>> = {
  by: {
    type: 'string',
    value: 'AXIS',
    help: 'order of the list: start (default), yield, steps, cost, hands-on, elapsed, mass-intensity, hazard',
  },
  avoid: { type: 'string', multiple: true, value: 'ID', help: 'no route with this material in any role; repeatable' },
  'avoid-step': { type: 'string', multiple: true, value: 'ID', help: 'no route with this transformation; repeatable' },
  'must-pass': { type: 'string', multiple: true, value: 'ID', help: 'only routes that make or start from this compound; repeatable' },
  'avoid-code': { type: 'string', multiple: true, value: 'H350', help: 'no route with a material under this hazard statement; repeatable' },
  'avoid-list': { type: 'string', multiple: true, value: 'NAME', help: 'no route with a material on this regulated list; repeatable' },
  'owned-only': { type: 'boolean', help: 'only steps for which the settings own vessel kind, hood, inert gas and heat' },
  'seen-only': {
    type: 'boolean',
    help: 'only steps whose charge and yield were seen in a source or run at the own bench, none that is remembered',
  },
  'max-steps': { type: 'string', value: 'N', help: 'at most so many steps' },
  make: {
    type: 'string',
    multiple: true,
    value: 'ID',
    help: 'only routes that make this bought compound; "all" opens every make-or-buy; repeatable',
  },
  packs: { type: 'string', value: 'FILE', help: 'packs and prices (waybench-packs); "demo" names the invented ones' },
  settings: { type: 'string', value: 'FILE', help: 'settings of the bench, as in a plan file; "demo" names the workshop of the demo' },
}
