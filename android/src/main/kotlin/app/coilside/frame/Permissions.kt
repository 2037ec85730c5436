package app.coilside.frame

import android.Manifest
import android.app.Activity
import android.content.Context
import android.content.Intent
import android.content.pm.PackageManager
import android.net.Uri
import android.os.Build
import android.provider.Settings
import app.coilside.blocks.AlarmLine
import app.coilside.effects.Alarms
import app.coilside.effects.Locator
import app.coilside.session.Words

/** Asks the person for what the system gives only with their word: messages, exact alarms, the place. Denied, the work goes on. */
class Permissions(
    private val activity: Activity,
    private val alarms: Alarms,
    private val locator: Locator,
    private val show: (Intent) -> Unit,
) {
    /** What is said below a waiting time that runs; none where no alarm is set. */
    fun alarmLine(words: Words): AlarmLine? = when {
        !alarms.isWaiting -> null
        !alarms.isHeard -> AlarmLine(words.say("alarm-phone-quiet"), words.say("alarm-allow"), ::allowMessages)
        !alarms.isExact -> AlarmLine(words.say("alarm-phone-late"), words.say("alarm-exact"), ::allowExact)
        alarms.isSaving -> AlarmLine(words.say("alarm-saver"), null, null)
        else -> AlarmLine(words.say("alarm-phone"), null, null)
    }

    /** Asked once, when the first clock runs: the line below it says why. Later the line's own button asks. */
    fun askForMessages() {
        if (Build.VERSION.SDK_INT < Build.VERSION_CODES.TIRAMISU || alarms.isHeard) return
        val asked = activity.getSharedPreferences("messages", Context.MODE_PRIVATE)
        if (asked.getBoolean(ASKED, false)) return
        asked.edit().putBoolean(ASKED, true).apply()
        activity.requestPermissions(arrayOf(Manifest.permission.POST_NOTIFICATIONS), MESSAGES)
    }

    private fun allowMessages() {
        val canAsk = Build.VERSION.SDK_INT >= Build.VERSION_CODES.TIRAMISU &&
            activity.shouldShowRequestPermissionRationale(Manifest.permission.POST_NOTIFICATIONS)
        if (canAsk) return activity.requestPermissions(arrayOf(Manifest.permission.POST_NOTIFICATIONS), MESSAGES)
        show(Intent(Settings.ACTION_APP_NOTIFICATION_SETTINGS).putExtra(Settings.EXTRA_APP_PACKAGE, activity.packageName))
    }

    private fun allowExact() {
        if (Build.VERSION.SDK_INT < Build.VERSION_CODES.S) return
        show(Intent(Settings.ACTION_REQUEST_SCHEDULE_EXACT_ALARM, Uri.fromParts("package", activity.packageName, null)))
    }

    fun askForPlace() = activity.requestPermissions(Locator.PERMISSIONS, PLACE)

    /** The person answered. */
    fun answered(request: Int, results: IntArray) {
        if (request == PLACE) locator.answered()
        if (request == MESSAGES && results.firstOrNull() == PackageManager.PERMISSION_GRANTED) alarms.setAgain()
    }

    private companion object {
        const val ASKED = "asked"

        /** Request codes. */
        const val PLACE = 11
        const val MESSAGES = 12
    }
}
