package app.coilside.frame

import android.app.Activity
import android.os.Build
import android.view.WindowManager

/** While a clock runs the display stays on; an alarm comes over the locked screen. The system is told where that changes: each time costs it a layout. */
class Wakefulness(private val activity: Activity) {
    private var staysOn = false
    private var isOverLock = false

    fun show(clockRuns: Boolean, rings: Boolean) {
        if (staysOn != (clockRuns || rings)) {
            staysOn = !staysOn
            flags(WindowManager.LayoutParams.FLAG_KEEP_SCREEN_ON, staysOn)
        }
        if (isOverLock != rings) {
            isOverLock = rings
            overLock(rings)
        }
    }

    private fun overLock(on: Boolean) {
        if (Build.VERSION.SDK_INT >= Build.VERSION_CODES.O_MR1) {
            activity.setShowWhenLocked(on)
            activity.setTurnScreenOn(on)
        } else {
            @Suppress("DEPRECATION")
            flags(WindowManager.LayoutParams.FLAG_SHOW_WHEN_LOCKED or WindowManager.LayoutParams.FLAG_TURN_SCREEN_ON, on)
        }
    }

    private fun flags(flags: Int, on: Boolean) = with(activity.window) { if (on) addFlags(flags) else clearFlags(flags) }
}
