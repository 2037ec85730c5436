package app.coilside.effects

import android.annotation.SuppressLint
import android.app.AlarmManager
import android.app.NotificationManager
import android.app.PendingIntent
import android.content.Context
import android.content.Intent
import android.net.Uri
import android.os.Build
import android.os.PowerManager
import android.os.SystemClock
import app.coilside.Ground
import app.coilside.session.WakeRequests
import org.json.JSONObject

/** An alarm that rings. */
class Ringing(val id: String, val text: String)

/**
 * Calls the person at a time, even if the app is closed. Alarms are kept on the disk, so that they can be set again after
 * the phone was switched off; within one boot they count on and do not follow a wall clock that is set.
 */
class Alarms(private val app: Context, private val ground: Ground) : WakeRequests {
    private val manager = app.getSystemService(AlarmManager::class.java)
    private val waiting = app.getSharedPreferences("alarms", Context.MODE_PRIVATE)
    private val rings = app.getSharedPreferences("rings", Context.MODE_PRIVATE)
    private val ringer = Ringer(app)

    /** What rang or is being asked about in this process: it is not set again before its answer has arrived. */
    private val due = HashSet<String>()

    /** Told on the main thread when an alarm begins or stops ringing. */
    var changed: () -> Unit = {}

    /** The alarm that rings now; it goes on where the process ended under it, until somebody stops it. */
    @Volatile
    var ringing: Ringing? = rings.getString(ID, null)?.let { Ringing(it, rings.getString(TEXT, "").orEmpty()) }
        private set

    /** Whether an alarm waits. */
    override val isWaiting: Boolean get() = waiting.all.isNotEmpty()

    /** Whether the system lets an alarm ring to the second. */
    val isExact: Boolean get() = Build.VERSION.SDK_INT < Build.VERSION_CODES.S || manager.canScheduleExactAlarms()

    /** Whether the system saves charge, and lets apps wait for it. */
    val isSaving: Boolean get() = app.getSystemService(PowerManager::class.java).isPowerSaveMode

    /** Whether the system shows our messages, with their sound. */
    val isHeard: Boolean get() = app.getSystemService(NotificationManager::class.java).areNotificationsEnabled()

    @Synchronized
    override fun wake(effectId: String, utcMs: Long, text: String) {
        if (effectId in due) return
        val now = ground.now()
        val known = waiting.getString(effectId, null)?.let(::JSONObject)
        val counted = known?.takeIf { it.getString(EPOCH) == now.monoEpoch }
        val monoMs = counted?.getLong(MONO_MS) ?: (now.monoMs + utcMs - now.utcMs)
        val alarm = JSONObject().put(UTC_MS, utcMs).put(TEXT, text).put(EPOCH, now.monoEpoch).put(MONO_MS, monoMs)
        waiting.edit().putString(effectId, alarm.toString()).commit()
        set(effectId, monoMs - now.monoMs)
    }

    /** Sets again what waits: after a boot by the wall clock, else as it was counted. */
    @Synchronized
    fun setAgain() {
        for ((id, alarm) in waiting.all) {
            val known = JSONObject(alarm as String)
            wake(id, known.getLong(UTC_MS), known.getString(TEXT))
        }
    }

    @SuppressLint("MissingPermission")
    private fun set(id: String, inMs: Long) {
        val at = SystemClock.elapsedRealtime() + inMs.coerceAtLeast(0)
        val ring = pendingOf(id)
        try {
            if (isExact) manager.setExactAndAllowWhileIdle(AlarmManager.ELAPSED_REALTIME_WAKEUP, at, ring)
            else manager.setAndAllowWhileIdle(AlarmManager.ELAPSED_REALTIME_WAKEUP, at, ring)
        } catch (withdrawn: SecurityException) {
            manager.setAndAllowWhileIdle(AlarmManager.ELAPSED_REALTIME_WAKEUP, at, ring)
        }
    }

    private fun pendingOf(id: String): PendingIntent {
        val intent = Intent(app, AlarmReceiver::class.java).setData(Uri.fromParts("alarm", id, null))
        return PendingIntent.getBroadcast(app, 0, intent, PendingIntent.FLAG_IMMUTABLE or PendingIntent.FLAG_UPDATE_CURRENT)
    }

    /** The time of [id] has come. Returns its text; none where it was answered or forgotten before. */
    @Synchronized
    fun comes(id: String): String? {
        val known = waiting.getString(id, null) ?: return null
        due += id
        return JSONObject(known).getString(TEXT)
    }

    /** Rings for [id], or where it is not [wanted] any more, forgets it. */
    fun ring(id: String, text: String, wanted: Boolean, language: String?) {
        synchronized(this) { waiting.edit().remove(id).commit() }
        if (!wanted) return
        ringing = Ringing(id, text)
        rings.edit().putString(ID, id).putString(TEXT, text).commit()
        ringer.ring(text, language, isHeard)
        changed()
    }

    @Synchronized
    override fun onlyThese(open: Set<String>) {
        for (id in waiting.all.keys - open - due) {
            waiting.edit().remove(id).commit()
            manager.cancel(pendingOf(id))
        }
    }

    fun stop() {
        ringing = null
        rings.edit().clear().commit()
        ringer.stop()
        changed()
    }

    fun close() {
        ringer.close()
    }

    private companion object {
        const val ID = "id"
        const val UTC_MS = "utc_ms"
        const val TEXT = "text"
        const val EPOCH = "mono_epoch"
        const val MONO_MS = "mono_ms"
    }
}
