import { contextBridge, ipcRenderer, webUtils } from 'electron';
import { contract } from '../contract.ts';
import type { Bridge } from '../contract.ts';
import { CALL_CHANNEL, DROP_CHANNEL } from './channels.ts';

/** All that the page gets: calls of the contract, checked before they leave, and the token of a dropped folder. */
const bridge: Bridge = {
  call: (name, argument) => {
    if (!Object.hasOwn(contract, name)) return Promise.reject(new Error('there is no such call'));
    return ipcRenderer.invoke(CALL_CHANNEL, name, contract[name].argument.parse(argument));
  },
  folderOfDrop: async (files) => (files.length === 0 ? null : ipcRenderer.invoke(DROP_CHANNEL, webUtils.getPathForFile(files[0] as never))),
};

contextBridge.exposeInMainWorld('strandbook', bridge);
