import { planOfJoint, sayJointTorque } from '../../../../shared/procedure/modelAtStep.ts';
import { jointsOf } from '../../../../shared/tightening/fromModel.ts';
import { sayBackOff, sayOrder } from '../../../../shared/tightening/say.ts';
import { useWords } from '../core/words.ts';
import type { KnownModel } from '../form/view/useModel.ts';
import { Box } from './Box.tsx';

/** Every joint of the model with its torque, order, manual and page, and a box for what was used; then the kit. */
export function SheetJoints({ model }: { readonly model: NonNullable<KnownModel['model']> }) {
  const words = useWords();
  const joints = jointsOf(model);
  return (
    // Wide on a phone: it scrolls by itself, with the keyboard too.
    <section class="sheet-joints" tabIndex={0} aria-label={words.t('sheet.joints')}>
      {joints.length > 0 && (
        <table>
          <caption>{words.t('sheet.joints')}</caption>
          <thead>
            <tr>
              <th scope="col">{words.t('sheet.joint')}</th>
              <th scope="col">{words.t('sheet.torque')}</th>
              <th scope="col">{words.t('sheet.order')}</th>
              <th scope="col">{words.t('sheet.source')}</th>
              <th scope="col">{words.t('sheet.used')}</th>
            </tr>
          </thead>
          <tbody>
            {joints.map((joint) => {
              const plan = joint.kind === 'bolts' ? planOfJoint(joint) : null;
              return (
                <tr key={joint.joint}>
                  <th scope="row">{joint.joint}</th>
                  {joint.kind === 'bolts' ? (
                    <>
                      <td>{sayJointTorque(joint, words)}</td>
                      <td class="order">{plan ? sayOrder(plan) : ''}</td>
                    </>
                  ) : (
                    <td colSpan={2}>{sayBackOff(joint, words.locale)}</td>
                  )}
                  <td>{joint.manual ? `${joint.manual}, ${joint.page ?? ''}` : ''}</td>
                  <td class="box" />
                </tr>
              );
            })}
          </tbody>
        </table>
      )}
      {model.kitContents.length > 0 && (
        <p class="sheet-small">
          <strong>{words.t('sheet.kit')}</strong>{' '}
          {model.kitContents.map((part) => (
            <Box key={part.partNumber}>{words.t('sheet.part', part)}</Box>
          ))}
        </p>
      )}
    </section>
  );
}
