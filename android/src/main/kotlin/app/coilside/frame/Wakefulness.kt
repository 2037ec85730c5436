package app.coilside.frame

import android.app.Activity
import android.os.Build
import android.view.WindowManager

/** While a clock runs the display stays on; an alarm comes over the locked screen. */
fun Activity.keepAwake(clockRuns: Boolean, rings: Boolean) {
    val flag = WindowManager.LayoutParams.FLAG_KEEP_SCREEN_ON
    if (clockRuns || rings) window.addFlags(flag) else window.clearFlags(flag)
    if (Build.VERSION.SDK_INT >= Build.VERSION_CODES.O_MR1) {
        setShowWhenLocked(rings)
        setTurnScreenOn(rings)
    } else {
        @Suppress("DEPRECATION")
        val over = WindowManager.LayoutParams.FLAG_SHOW_WHEN_LOCKED or WindowManager.LayoutParams.FLAG_TURN_SCREEN_ON
        if (rings) window.addFlags(over) else window.clearFlags(over)
    }
}
