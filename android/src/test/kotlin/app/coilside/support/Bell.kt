package app.coilside.support

import android.app.AlarmManager
import android.app.Notification
import android.app.NotificationManager
import android.content.Context
import android.content.Intent
import android.os.Looper
import android.os.SystemClock
import org.robolectric.RuntimeEnvironment
import org.robolectric.Shadows.shadowOf
import org.robolectric.shadows.ShadowAlarmManager

/** The system's alarms and messages. */
object Bell {
    private val app get() = RuntimeEnvironment.getApplication()
    private val alarms get() = shadowOf(app.getSystemService(Context.ALARM_SERVICE) as AlarmManager)
    private val messages get() = shadowOf(app.getSystemService(Context.NOTIFICATION_SERVICE) as NotificationManager)

    /** What is set, the next first. */
    fun set(): List<ShadowAlarmManager.ScheduledAlarm> = alarms.scheduledAlarms.sortedBy { it.triggerAtMs }

    /** In how many milliseconds the next one rings. */
    fun inMs(): Long? = set().firstOrNull()?.let {
        it.triggerAtMs - if (it.type == AlarmManager.RTC || it.type == AlarmManager.RTC_WAKEUP) System.currentTimeMillis() else SystemClock.elapsedRealtime()
    }

    /** The next one rings, whoever lives. */
    fun ring() {
        val next = checkNotNull(set().firstOrNull()) { "no alarm is set" }
        alarms.fireAlarm(next)
        shadowOf(Looper.getMainLooper()).idle()
    }

    /** What the system shows at this time. */
    fun shown(): List<Notification> = messages.allNotifications

    /** What the system opens above a locked screen. */
    fun fullScreen(): Intent? = shown().firstNotNullOfOrNull { it.fullScreenIntent }?.let { shadowOf(it).savedIntent }
}
