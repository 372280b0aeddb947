// How the packager, electron-builder, makes the installers; `npm run package` hands it over. Paths are from the project's
// top. A test holds this against the packager's own schema.

// Nobody's address: `.invalid` never resolves (RFC 2606). Whoever hands installers out puts their own here.
const MAINTAINER = { name: 'Chipdraft contributors', email: 'nobody@chipdraft.invalid' };
const HOMEPAGE = 'https://chipdraft.invalid/';

const LARGEST_ICON = 'build/icons/1024x1024.png';

/** Each notice with where it lies: a bundle carries its own, and an installed program shows all beside it. */
const NOTICES = {
  LICENSE: 'LICENSE.txt',
  'dist/renderer/THIRD-PARTY.txt': 'THIRD-PARTY-page.txt',
  'dist/electron/THIRD-PARTY.txt': 'THIRD-PARTY-window.txt',
};

export default {
  appId: 'chipdraft.workbook',
  productName: 'Chipdraft',
  copyright: 'Copyright (c) 2026 Chipdraft contributors',
  extraMetadata: { author: MAINTAINER, homepage: HOMEPAGE, desktopName: 'chipdraft.desktop' },
  directories: { buildResources: 'build/icons', output: 'dist/installers' },
  artifactName: '${name}-${version}-${os}-${arch}.${ext}',
  // The bundles hold all that they need, so no package goes in beside them.
  files: ['dist/electron/**', 'dist/renderer/**', '!node_modules/**'],
  extraResources: Object.entries(NOTICES).map(([from, to]) => ({ from, to: `licences/${to}` })),
  asar: true,
  npmRebuild: false,
  publish: null,
  electronFuses: {
    runAsNode: false,
    enableCookieEncryption: true,
    enableNodeOptionsEnvironmentVariable: false,
    enableNodeCliInspectArguments: false,
    enableEmbeddedAsarIntegrityValidation: true,
    onlyLoadAppFromAsar: true,
    loadBrowserProcessSpecificV8Snapshot: false,
    grantFileProtocolExtraPrivileges: false,
    resetAdHocDarwinSignature: true,
  },

  // A shop is a `.json`, which belongs to nobody: on each system Chipdraft is offered for it and does not claim it. The
  // packager's own association would claim it on Windows, so installer.nsh does it there.
  linux: {
    target: ['AppImage', 'deb'],
    icon: 'build/icons',
    executableName: 'chipdraft',
    syncDesktopName: true,
    category: 'Science;Engineering',
    synopsis: 'Dust-collection design and duct-loss workbook',
    maintainer: `${MAINTAINER.name} <${MAINTAINER.email}>`,
    mimeTypes: ['application/json'],
  },
  win: { target: ['nsis'], icon: LARGEST_ICON },
  nsis: {
    oneClick: false,
    perMachine: false,
    allowToChangeInstallationDirectory: true,
    deleteAppDataOnUninstall: false,
    differentialPackage: false,
    include: 'build/config/installer.nsh',
  },
  mac: {
    target: ['dmg'],
    icon: LARGEST_ICON,
    category: 'public.app-category.productivity',
    darkModeSupport: true,
    hardenedRuntime: true,
    fileAssociations: [{ ext: 'json', name: 'Chipdraft shop', role: 'Editor', rank: 'Alternate' }],
  },
  dmg: { writeUpdateInfo: false },
};
