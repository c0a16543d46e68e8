/// <reference types="astro/client" />

declare namespace App {
  interface Locals {
    /** The page that a story component stands on. */
    page?: import('./lineage/page-context.ts').PageContext;
  }
}

declare module '*.astro' {
  const Component: import('astro/runtime/server/index.js').AstroComponentFactory;
  export default Component;
}
