import type { TestProject } from 'vitest/node';
import { requireBrowser } from '../../scripts/browser.ts';

/** Finds the browser for tests that build a site of their own. */
export default function setup(project: TestProject): void {
  project.provide('browserPath', requireBrowser());
}
