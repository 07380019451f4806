import type { ReactNode } from 'react';
import { Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components';

interface SheetProps {
  readonly title: string;
  readonly onClose: () => void;
  readonly children: ReactNode;
  readonly wide?: boolean;
}

/** A sheet over the page: keeps the focus, closes with Escape or a press beside it. */
export function Sheet({ title, onClose, children, wide = false }: SheetProps) {
  return (
    <ModalOverlay isOpen isDismissable onOpenChange={(open) => { if (!open) onClose(); }} className="overlay">
      <Modal className={wide ? 'sheet sheet-wide' : 'sheet'}>
        <Dialog className="sheet-body">
          <div className="sheet-head">
            <Heading slot="title">{title}</Heading>
            <button type="button" className="button-plain" onClick={onClose} aria-label="Close">✕</button>
          </div>
          {children}
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}
