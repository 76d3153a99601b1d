import type { Api } from './resource.ts'

/** The document that describes the API, made from the same schemas that check it. */
export function openApi(api: Api): void {
  api.get('/openapi.json', { schema: { hide: true } }, () => api.swagger())
}
