import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

const config = JSON.parse(readFileSync('build/electron-builder.json', 'utf8')) as { asar: boolean; files: string[]; electronFuses: Record<string, boolean> };

/** Fuses as Electron's security tutorial, point 19, asks for them (electronjs.org/docs/latest/tutorial/security and tutorial/fuses). */
describe('the packaged app', () => {
  it('can be neither a Node runtime nor debugged from outside, and gives file pages no privileges', () => {
    expect(config.electronFuses).toMatchObject({ runAsNode: false, enableNodeOptionsEnvironmentVariable: false, enableNodeCliInspectArguments: false, grantFileProtocolExtraPrivileges: false });
  });

  it('runs only from its own archive, whose integrity is checked', () => {
    expect(config.asar).toBe(true);
    expect(config.electronFuses).toMatchObject({ enableEmbeddedAsarIntegrityValidation: true, onlyLoadAppFromAsar: true });
  });

  it('names every fuse as the packager knows it', () => {
    const scheme = JSON.parse(readFileSync('node_modules/app-builder-lib/scheme.json', 'utf8')) as { definitions: { FuseOptionsV1: { properties: Record<string, unknown> } }; properties: Record<string, unknown> };
    expect(Object.keys(scheme.definitions.FuseOptionsV1.properties)).toEqual(expect.arrayContaining(Object.keys(config.electronFuses)));
    expect(Object.keys(scheme.properties)).toEqual(expect.arrayContaining(Object.keys(config)));
  });

  it('starts from the file that package.json names, which the bundler writes and the package holds', () => {
    const { main } = JSON.parse(readFileSync('package.json', 'utf8')) as { main: string };
    expect(main).toBe('dist/node/desktop.mjs');
    expect(config.files).toContain('dist/node/**');
    expect(existsSync(join('main', 'desktop', 'main.ts'))).toBe(true);
    expect(readFileSync('build/bundle.mjs', 'utf8')).toContain("desktop: 'main/desktop/main.ts'");
  });
});
