import { type Injector, LifecycleService, toDisposable } from "@univerjs/core";
import { SheetInterceptorService } from "@univerjs/sheets";

/** The setting that the handler in question asks for, in its last step. */
const ITS_SETTING = "disableForceStringMark";

/**
 * Leaves out the grid's mark on texts that look like numbers. It is switched off in the settings, but the grid asks
 * for the setting only after it has tried to read every text in sight as a number, at each drawing of the sheet:
 * a third of the time that an edit took.
 */
export function guardNumberMarks(injector: Injector): void {
  // The service stands from the first stage on that the grid reaches with its first workbook.
  let isGuarded = false;
  injector.get(LifecycleService).lifecycle$.subscribe(() => {
    if (isGuarded || !injector.has(SheetInterceptorService)) return;
    isGuarded = true;
    guard(injector);
  });
}

function guard(injector: Injector): void {
  const service = injector.get(SheetInterceptorService);
  const intercept = service.intercept.bind(service) as (...given: readonly unknown[]) => unknown;
  const guarded = (point: unknown, interceptor: { readonly handler?: unknown }) =>
    String(interceptor.handler).includes(ITS_SETTING)
      ? toDisposable(() => undefined)
      : intercept(point, interceptor);
  service.intercept = guarded as typeof service.intercept;
}
