/** A helper of `npm run editor`: opens the file that the environment names, with its preview beside it, once. */
const vscode = require('vscode');

exports.activate = async () => {
  const file = process.env.DRAFTWRIGHT_OPEN;
  const free = vscode.window.tabGroups.all.every(({ tabs }) => tabs.length === 0);
  if (!file || !free) return;
  await vscode.window.showTextDocument(vscode.Uri.file(file));
  await vscode.commands.executeCommand('draftwright.openPreviewToSide');
};
