package app.coilside.support

import android.Manifest
import android.content.Context
import android.content.pm.PackageManager
import android.location.Location
import android.location.LocationManager
import android.os.SystemClock
import org.robolectric.RuntimeEnvironment
import org.robolectric.Shadows.shadowOf

/** What tells the phone where it is, and whether it may know. */
object Sky {
    private val app get() = RuntimeEnvironment.getApplication()
    private val manager get() = app.getSystemService(Context.LOCATION_SERVICE) as LocationManager

    fun on() = shadowOf(manager).setProviderEnabled(LocationManager.GPS_PROVIDER, true)

    fun off() = listOf(LocationManager.GPS_PROVIDER, LocationManager.NETWORK_PROVIDER, LocationManager.PASSIVE_PROVIDER)
        .forEach { shadowOf(manager).setProviderEnabled(it, false) }

    fun allow() = shadowOf(app).grantPermissions(Manifest.permission.ACCESS_FINE_LOCATION, Manifest.permission.ACCESS_COARSE_LOCATION)

    fun deny() = shadowOf(app).denyPermissions(Manifest.permission.ACCESS_FINE_LOCATION, Manifest.permission.ACCESS_COARSE_LOCATION)

    /** A fix arrives. */
    fun fix(latitudeDeg: Double = Village.LATITUDE_DEG, longitudeDeg: Double = Village.LONGITUDE_DEG, accuracyM: Float = 6f, ageMs: Long = 0) {
        val location = Location(LocationManager.GPS_PROVIDER).apply {
            latitude = latitudeDeg
            longitude = longitudeDeg
            accuracy = accuracyM
            time = System.currentTimeMillis() - ageMs
            elapsedRealtimeNanos = SystemClock.elapsedRealtimeNanos() - ageMs * 1_000_000
        }
        shadowOf(manager).simulateLocation(location)
    }

    /** Answers what the activity asked the person last; false where nothing was asked. */
    fun answer(phone: Phone, granted: Boolean): Boolean {
        val asked = shadowOf(phone.activity).lastRequestedPermission ?: return false
        if (granted) shadowOf(app).grantPermissions(*asked.requestedPermissions) else shadowOf(app).denyPermissions(*asked.requestedPermissions)
        val result = if (granted) PackageManager.PERMISSION_GRANTED else PackageManager.PERMISSION_DENIED
        phone.activity.onRequestPermissionsResult(asked.requestCode, asked.requestedPermissions, IntArray(asked.requestedPermissions.size) { result })
        phone.settle()
        return true
    }
}
