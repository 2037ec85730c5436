pack = Caja de aire fresco
    .name = Servicio anual de una caja de aire fresco

condition-filter = ¿De qué clase es el filtro?
condition-filter-washable = Lavable
condition-filter-paper = De papel

instrument-air-thermometer = Termómetro de aire

reading-air-found = Aire de la caja, al llegar
    .hint = En medio de la corriente.
reading-air-left = Aire de la caja, al salir
    .hint = En el mismo lugar.
reading-soap-parts = Partes de agua por una parte de jabón
    .hint = Como dice la etiqueta.
reading-soap-volume = Agua jabonosa necesaria en total
    .hint = El filtro debe quedar cubierto.

shot-filter-before = Filtro antes
    .show = El filtro entero, a contraluz. Muestra cuánto retiene.
shot-filter-after = Filtro después
    .show = La misma vista que antes.

chemical-mild-soap = Jabón suave
part-paper-filter = Filtro de papel
gear-bucket = Balde

mix-soap-water = Agua jabonosa
    .concentrate = Jabón suave
    .water = Agua limpia
    .order-1 = Agua al balde.
    .order-2 = Después el jabón.
    .gear = Guantes. La etiqueta va primero.

phase-arrive = Llegada
    .owner = Miramos la caja y medimos su aire.
    .matters = Los números de antes muestran qué hizo el servicio.
phase-filter = Filtro
    .owner = Limpiamos o cambiamos el filtro.
    .matters = Aire limpio para usted, menos trabajo para el ventilador.
phase-leave = Salida

step-look = Mirar la caja y medir su aire
    .why = Solo los números de antes y después muestran qué hizo el servicio.
step-lock = Apagar la caja, poner candado y etiqueta
    .why = El ventilador arranca solo.
    .how = Candado propio en el seccionador. Se abre el cajón, ninguna tapa.
step-draw-filter = Sacar el filtro
    .why = De un filtro tirado de golpe cae polvo.
step-soak-filter = Dejar el filtro en agua jabonosa
    .why = El jabón necesita tiempo para soltar la grasa.
    .then = Enjuagarlo con agua clara y sacudirlo.
step-change-filter = Poner un filtro de papel nuevo en el marco
    .why = El papel no se puede lavar.
step-put-back = Volver a meter el filtro
    .why = Sin él se tapa el ventilador.
    .how = La flecha en la dirección del aire.
step-unlock = Quitar el candado y encender la caja
    .why = Ahora puede arrancar.
step-read-left = Medir otra vez su aire
    .why = El mismo lugar, para comparar.
