package app.coilside.effects

import android.Manifest
import android.annotation.SuppressLint
import android.content.Context
import android.content.pm.PackageManager
import android.location.Location
import android.location.LocationListener
import android.location.LocationManager
import android.os.Build
import android.os.Bundle
import android.os.Handler
import android.os.Looper
import android.os.SystemClock
import app.coilside.session.Session
import coilside.Outcome
import coilside.PlaceFix
import coilside.Request

/** Says where the device is, where the person allowed it. Used on the main thread. */
class Locator(private val app: Context, private val session: Session) {
    private val main = Handler(Looper.getMainLooper())
    private val manager = app.getSystemService(LocationManager::class.java)
    private val kept = app.getSharedPreferences("place", Context.MODE_PRIVATE)
    private val begun = HashSet<String>()

    /** Told when a question came up or was answered. */
    var changed: () -> Unit = {}

    /** The request that waits for the person's answer whether the place may be read. */
    var asksFor: String? = null
        private set

    val isAllowed: Boolean
        get() = PERMISSIONS.any { app.checkSelfPermission(it) == PackageManager.PERMISSION_GRANTED }

    /** Begins what the core asks for and was not begun. */
    fun look() {
        for ((id, request) in session.wanted) {
            if (request !is Request.Locate || id in begun || id == asksFor) continue
            when {
                isAllowed -> locate(id)
                kept.getBoolean(ASKED, false) -> answer(id, Outcome.Failed(session.words.say("place-refused")))
                else -> {
                    asksFor = id
                    changed()
                }
            }
        }
    }

    /** The person answered whether the place may be read. It is asked once. */
    fun answered() {
        val id = asksFor ?: return
        kept.edit().putBoolean(ASKED, true).apply()
        asksFor = null
        if (isAllowed) locate(id) else answer(id, Outcome.Failed(session.words.say("place-refused")))
        changed()
    }

    private fun locate(id: String) {
        begun += id
        val off = "place-off".takeIf { !isOn() }
        if (off != null) return answer(id, Outcome.Failed(session.words.say(off)))
        fix(PATIENCE_MS) { place, refused ->
            val why = if (refused) "place-refused" else "place-late"
            answer(id, if (place != null) Outcome.Place(place) else Outcome.Failed(session.words.say(why)))
        }
    }

    private fun answer(id: String, outcome: Outcome) {
        begun += id
        session.done(id, outcome)
    }

    /** The place for a photograph: only where it was allowed before, and without keeping anybody waiting. */
    fun atHand(then: (PlaceFix?) -> Unit) {
        if (!isAllowed || !isOn()) return then(null)
        val last = lastKnown()
        if (last != null && last.ageMs <= AGE_MAX_MS) return then(last)
        fix(AT_HAND_MS) { place, _ -> then(place) }
    }

    /** A photograph is about to be taken: its place is looked for meanwhile. */
    fun prime() {
        if (isAllowed && isOn()) fix(PRIME_MS) { _, _ -> }
    }

    private fun isOn(): Boolean = providers().isNotEmpty()

    private fun providers(): List<String> {
        val known = ArrayList(listOf(LocationManager.GPS_PROVIDER, LocationManager.NETWORK_PROVIDER))
        if (Build.VERSION.SDK_INT >= Build.VERSION_CODES.S) known += LocationManager.FUSED_PROVIDER
        return known.filter { it in manager.allProviders && manager.isProviderEnabled(it) }
    }

    @SuppressLint("MissingPermission")
    private fun lastKnown(): PlaceFix? = try {
        providers().mapNotNull { manager.getLastKnownLocation(it) }.map(::fixOf).minByOrNull { it.ageMs }
    } catch (revoked: SecurityException) {
        null
    }

    /** A fresh place: the first that is good, or after [patienceMs] the best there was. [then] also hears of a refusal. */
    @SuppressLint("MissingPermission")
    private fun fix(patienceMs: Long, then: (PlaceFix?, Boolean) -> Unit) {
        var best: Location? = null
        var over = false
        lateinit var listener: LocationListener
        fun end(refused: Boolean) {
            if (over) return
            over = true
            manager.removeUpdates(listener)
            then(best?.let(::fixOf), refused)
        }
        listener = Heard { location ->
            // Some systems begin with what they knew long before.
            if (fixOf(location).ageMs > AGE_MAX_MS) return@Heard
            if (best == null || location.accuracy <= (best?.accuracy ?: 0f)) best = location
            if (location.accuracy <= GOOD_M) end(false)
        }
        try {
            for (provider in providers()) manager.requestLocationUpdates(provider, 0L, 0f, listener, Looper.getMainLooper())
            main.postDelayed({ end(false) }, patienceMs)
        } catch (revoked: SecurityException) {
            end(true)
        }
    }

    private fun fixOf(location: Location): PlaceFix {
        val ageMs = (SystemClock.elapsedRealtimeNanos() - location.elapsedRealtimeNanos) / NS_A_MS
        return PlaceFix(location.latitude, location.longitude, location.accuracy.toDouble(), ageMs.coerceAtLeast(0))
    }

    fun close() = main.removeCallbacksAndMessages(null)

    /** Old systems call what newer ones no longer ask for. */
    private class Heard(private val heard: (Location) -> Unit) : LocationListener {
        override fun onLocationChanged(location: Location) = heard(location)

        @Deprecated("Called by old systems only")
        override fun onStatusChanged(provider: String?, status: Int, extras: Bundle?) = Unit

        override fun onProviderEnabled(provider: String) = Unit

        override fun onProviderDisabled(provider: String) = Unit
    }

    companion object {
        /** Coarse alone is a working state: the doubt is then a wide one. */
        val PERMISSIONS = arrayOf(Manifest.permission.ACCESS_FINE_LOCATION, Manifest.permission.ACCESS_COARSE_LOCATION)
        private const val ASKED = "asked"

        /** How long a fix may take, milliseconds: from the cold a receiver needs most of a minute. */
        private const val PATIENCE_MS = 60_000L

        /** How long a photograph waits for its place, milliseconds. */
        private const val AT_HAND_MS = 2_000L

        /** How long a place is looked for while the camera is open, milliseconds. */
        private const val PRIME_MS = 20_000L

        /** How old a place may be, milliseconds. */
        private const val AGE_MAX_MS = 60_000L

        /** A place of no more doubt than this is taken at once, metres. */
        private const val GOOD_M = 25f
        private const val NS_A_MS = 1_000_000L
    }
}
