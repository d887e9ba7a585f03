/** The part of the runtime's own module that these tests use. */
declare module 'cloudflare:workers' {
  export const exports: {
    readonly default: { fetch(input: string | Request, init?: RequestInit): Promise<Response> }
  }
}
